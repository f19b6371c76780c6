"""A series that lists one book twice."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.problem import Problem
from ..model.rule import HOUSE_RULE, Rule
from ..model.series import Series

RULE = Rule(
    name="series-book-twice",
    says="A series lists each of its books once.",
    why="Its minutes, materials and coverage are added up over its books; one listed twice would be counted twice.",
    source=HOUSE_RULE,
    wrong="books: [lamp-loft-lift, lamp-loft-lift]",
    right="books: [lamp-loft-lift, twenty-lanterns]",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each book of a series that stands in it already."""
    for page in collection.of_kind(Series):
        seen: set[str] = set()
        for index, book in enumerate(page.fields.books):
            if book in seen:
                yield RULE.problem(
                    page.place("books", index),
                    f'"{book}" is in this series already.',
                    "take it out, or name another book.",
                )
            seen.add(book)
