"""A plan of the weeks: the sessions of a series laid on the days of a school, by the scripts a reader's device runs too."""
