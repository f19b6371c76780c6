"""What authors name in the text, such as ``[[ram.mass]]``, and the page prints; and where a fact stands in the text."""
