"""What stands where a book has no pictures that may be shown: a card of ours for the book, and the cast as tokens."""
