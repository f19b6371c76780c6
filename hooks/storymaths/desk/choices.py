"""What may be picked in the boxes of a page: each list with its names and what they mean."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import NamedTuple

from ..model.book import Book
from ..model.collection import Collection
from ..model.fields import year_name
from .values import years

_CUT = 70


class Choice(NamedTuple):
    """What is written, and what it is called."""

    value: str
    says: str


def choices(collection: Collection, book: Book | None) -> Mapping[str, Sequence[Choice]]:
    """Every list by its name; objectives by that of their framework. The characters are those of the page's book."""
    reference = collection.reference
    named = {
        "concepts": [Choice(one.id, one.name) for one in reference.concepts.values()],
        "themes": [Choice(one.id, one.name) for one in reference.themes.values()],
        "areas": [Choice(one.id, one.name) for one in reference.areas.values()],
        "words": [Choice(one.word, f"{year_name(one.year)}: {_cut(one.means)}") for one in reference.words.values()],
        "materials": [Choice(one.id, one.name) for one in reference.materials.values()],
        "cautions": [Choice(one.id, one.name) for one in reference.cautions.values()],
        "books": [Choice(id, page.fields.title) for id, page in collection.books.items()],
        "frameworks": [Choice(one.id, one.name) for one in reference.frameworks.values()],
        "cast": [Choice(one.id, one.name) for one in book.cast] if book else [],
        "facts": list(_facts(book)) if book else [],
        "years": [Choice(*one) for one in years(list(reference.years))],
    }
    for framework in reference.frameworks.values():
        named[f"objectives-{framework.id}"] = [
            Choice(one.code, f"{year_name(one.year)}: {_cut(one.says)}") for one in framework.objectives
        ]
    return named


def parts_of(collection: Collection, framework: str, code: str) -> Sequence[Choice]:
    """The parts of an objective, where a session must say which it teaches."""
    objective = collection.reference.objectives.get((framework, code))
    if objective is None or not objective.has_parts:
        return ()
    return [Choice(part.id, part.says) for part in objective.parts]


def _facts(book: Book) -> Iterator[Choice]:
    told = {name: about.means for name, about in book.facts.items()}
    for name in dict.fromkeys(name for character in book.cast for name in character.facts):
        yield Choice(name, told.get(name, ""))


def _cut(words: str) -> str:
    return words if len(words) <= _CUT else f"{words[:_CUT].rsplit(' ', 1)[0]} …"
