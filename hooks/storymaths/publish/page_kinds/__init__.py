"""The kinds of page, a folder each: how a page of the kind is drawn, and what every list and file says of it."""
