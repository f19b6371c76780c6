"""Activities that work themselves out: one kind a folder, each exact and complete."""
