"""A small language for rules about numbers and facts, such as ``odd(a) and a + b > 6``: read, tried and said."""
