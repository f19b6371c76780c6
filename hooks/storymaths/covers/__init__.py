"""What sessions cover: objectives, words, materials, the path through a series, and the shortest shelf of books."""
