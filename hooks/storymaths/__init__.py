"""Maths lessons taught from picture books: read, checked, worked out and published."""
