"""What things are: books, sessions, objectives, problems. Frozen; nothing here reads or writes."""
