"""Two characters of one book with one id."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.problem import Problem
from ..model.rule import HOUSE_RULE, Rule

RULE = Rule(
    name="cast-twice",
    says="Each character of a book has an id of its own.",
    why="Activities name characters by id; two with one id would be one character in two places.",
    source=HOUSE_RULE,
    wrong="cast: [{id: crab, …}, {id: crab, …}]",
    right="cast: [{id: crab, …}, {id: prawn, …}]",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each character whose id is already taken in the book."""
    for page in collection.books.values():
        seen: set[str] = set()
        for index, character in enumerate(page.fields.cast):
            if character.id in seen:
                yield RULE.problem(
                    page.place("cast", index, "id"),
                    f'There is already a "{character.id}" in the cast.',
                    "give one of them another id.",
                )
            seen.add(character.id)
