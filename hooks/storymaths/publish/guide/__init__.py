"""The authors' guide: how pages are written, every field, every name, and what to do about the commonest problems."""
