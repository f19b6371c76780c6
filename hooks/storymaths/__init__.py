"""Maths lessons taught from picture books: read, checked, worked out and published."""

__version__ = "0.2.0"
