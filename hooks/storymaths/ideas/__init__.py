"""What maths is in a book: activities that its cast, pages and story can carry, for each year and objective."""
