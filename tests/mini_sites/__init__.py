"""Whole collections so small that what is worked out from them can be worked out by hand."""
