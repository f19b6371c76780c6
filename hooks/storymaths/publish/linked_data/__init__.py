"""What each page is, said in the words of schema.org and written as JSON-LD, for search engines and catalogues."""
