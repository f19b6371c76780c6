"""The desk: the collection in the author's own browser, to be read, written and looked at, on this machine alone."""
