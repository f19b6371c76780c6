"""Arithmetic as people write it: one reader of numbers, amounts and signs, one tree, and one way of saying a number."""
