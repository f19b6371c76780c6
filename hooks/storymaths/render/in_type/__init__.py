"""What stands where a book has no pictures that may be shown: a cover set in type, and the cast as tokens."""
