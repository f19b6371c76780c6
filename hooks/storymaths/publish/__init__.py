"""What is made from the whole collection: generated pages, the catalogue, the text index."""
