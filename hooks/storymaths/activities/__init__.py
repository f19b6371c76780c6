"""Activities that work themselves out: one kind a file, each exact and complete."""
