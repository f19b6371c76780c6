"""Changes to an author's file: a span of its text is replaced, and all else stays to the byte."""
