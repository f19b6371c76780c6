"""A built site tried, packed and put in the last one's place: all of it or nothing."""
