"""The collection for other programs, in published formats: each file says what it is, and which standard it keeps."""
