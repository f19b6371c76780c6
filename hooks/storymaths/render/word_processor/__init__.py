"""A page as a document for a word processor, which whoever teaches from it can change."""
