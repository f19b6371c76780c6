"""Facts of a cast that are a number for one character and words for another, or misspelt for one."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from ..model.book import Book, FactValue
from ..model.collection import Collection
from ..model.document import Document
from ..model.problem import Problem
from ..model.rule import HOUSE_RULE, Rule
from ..parse.suggestion import nearest

RULE = Rule(
    name="cast-fact-unlike",
    says="A fact of the cast has one name, and is of one sort, for all who have it: numbers, words, or true and false.",
    why="Activities count, order and sort by it, and cannot where one of it is of another sort.",
    source=HOUSE_RULE,
    wrong="facts: {mass: 9 bricks} … facts: {mass: 6}",
    right="facts: {mass: 9} … facts: {mass: 6}",
)
_SORTS: dict[type, str] = {bool: "true or false", int: "a number", str: "in words"}


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each fact of a character that is unlike that of most of the others."""
    for page in collection.books.values():
        yield from _misspelt(page)
        for fact, values in _by_fact(page.fields).items():
            usual, _ = Counter(type(value) for _, value in values).most_common(1)[0]
            for index, value in values:
                if type(value) is not usual:
                    character = page.fields.cast[index]
                    yield RULE.problem(
                        page.place("cast", index, "facts", fact),
                        f'The {fact} of {character.name} is "{value}"; that of most of the others is {_SORTS[usual]}.',
                        "write it as for the others; a unit stands once, under facts: of the book.",
                    )


def _by_fact(book: Book) -> dict[str, list[tuple[int, FactValue]]]:
    values: dict[str, list[tuple[int, FactValue]]] = {}
    for index, character in enumerate(book.cast):
        for fact, value in character.facts.items():
            values.setdefault(fact, []).append((index, value))
    return values


def _misspelt(page: Document[Book]) -> Iterator[Problem]:
    """A fact that one character alone has, who lacks the one of nearly that name which the others have."""
    by_fact, everybody = _by_fact(page.fields), len(page.fields.cast)
    for fact, values in by_fact.items():
        (index, _), others = values[0], [name for name, has in by_fact.items() if len(has) == everybody - 1]
        character = page.fields.cast[index]
        near = nearest(fact, [name for name in others if name not in character.facts])
        if len(values) == 1 and near and fact not in page.fields.facts:
            yield RULE.problem(
                page.place("cast", index, "facts", fact, "[key]"),
                f'{character.name} has a fact "{fact}" that nobody else has. Did you mean "{near}"?',
                f'write "{near}", or say under facts: of the book what "{fact}" means.',
            )
