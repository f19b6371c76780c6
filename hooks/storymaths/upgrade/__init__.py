"""A collection that an earlier version made, brought to the form of this one: only what changed is rewritten."""
