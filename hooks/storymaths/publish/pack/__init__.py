"""The school pack: one file with all of a series, to open without a server, and the check that it is whole."""
