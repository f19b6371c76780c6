"""A plan of the weeks: the sessions of a series laid on the days of a school, as a page, a table and a calendar."""
