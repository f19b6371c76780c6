"""How each kind of activity is filled from a book: one module a kind, and the table of them."""
