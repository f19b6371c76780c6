"""Books that come after themselves, and series in which a book comes before one that it comes after."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.book import Book
from ..model.collection import Collection
from ..model.problem import Problem
from ..model.rule import COMMON_PRACTICE, Rule
from ..model.series import Series

RULE = Rule(
    name="books-out-of-order",
    says="A book never comes after itself, and a series has no book before one that it comes after.",
    why="What an earlier book brings in is known in a later one; taught the other way round, it is not.",
    source=COMMON_PRACTICE,
    wrong="books: [steps-to-a-hundred, ten-pegs], where steps-to-a-hundred has after: [ten-pegs]",
    right="books: [ten-pegs, steps-to-a-hundred]",
    since="0.2.0",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each book of a circle, and for each book of a series that stands too soon."""
    titles = {name: page.fields.title for name, page in collection.books.items()}
    for page in collection.of_kind(Book):
        for index, named in enumerate(page.fields.after):
            if page.book in (named, *collection.books_before(named)):
                yield RULE.problem(
                    page.place("after", index),
                    f'"{page.fields.title}" would come after itself.',
                    "take one of the books out of after:, here or in the other book.",
                )
    for series in collection.of_kind(Series):
        books = series.fields.books
        for index, name in enumerate(books):
            late = [one for one in collection.books_before(name) if one in books[index + 1 :] and one != name]
            if late and name in titles:
                yield RULE.problem(
                    series.place("books", index),
                    f'"{titles[name]}" comes after "{titles[late[0]]}", which stands later in this series.',
                    "change the order of the books.",
                )
