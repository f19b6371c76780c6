"""From the model to HTML: fragments that any page frame can hold."""
