"""What is made from the whole collection: generated pages, the finder's data, open data, the text index."""
