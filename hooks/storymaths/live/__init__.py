"""A project shown while it is written: read again where it changed, each page drawn when it is asked for, served to its author."""
