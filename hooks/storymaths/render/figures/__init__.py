"""Drawings of what an activity shows: one name a file, each from plain data to inline SVG."""
