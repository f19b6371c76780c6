"""Drawings read against the list of what they may hold, and written again from what it lets through."""
