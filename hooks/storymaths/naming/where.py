"""Every line of a book's pages that a fact of its cast stands in: what follows it by itself, and what somebody must look at.

Surest first: lines that name the fact; that name the character with a number; that hold its number; that hold the
number it makes with others of the cast. It lists too much rather than too little: what it leaves out is left to nobody.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from itertools import combinations
from typing import Literal, NamedTuple

from ..claims.number_words import NUMBER_IN_WORDS, number_in_words
from ..model.book import Book, Character
from ..model.names import NAME

Sort = Literal["by name", "by name, and more", "with a number", "the same number", "a sum"]
HEADINGS: Mapping[Sort, str] = {
    "by name": "These name the fact, and follow it by themselves",
    "by name, and more": "These name the fact, and hold a number as well that does not follow",
    "with a number": "These name {name} and hold a number, and do not follow",
    "the same number": "These hold the number {value}, of {name} or of something else",
    "a sum": "These hold a number that {value} makes with others of the cast",
}
_NUMBER = re.compile(rf"(?<![\w.£])(?:(\d+)(?![\d:]|\.\d)|({NUMBER_IN_WORDS}))", re.IGNORECASE)
_NO_TEXT = re.compile(
    r"^ *(?:- )?(?:picture|cover|id|isbn|published|number|kind|needs|book|version):|^ *- \{ ?date:.*$|\]\([^)]*\)"
    r"|\b(?:minutes|pages?|year|also|group_size): [\d-]+|\b[1-6][A-Z]+\d?\w?-?\d?\b"
)
"""Names of files, dates and codes, whose numbers say nothing of anybody."""


class Line(NamedTuple):
    """A line of a page's file, and how a fact stands in it."""

    path: str
    number: int
    text: str
    sort: Sort


def lines_about(texts: Mapping[str, str], book: Book, who: Character, fact: str) -> list[Line]:
    """The lines of a book's pages, given by path as they are written, in which a fact of a character stands."""
    value, sums = who.facts[fact], _sums(book, who, fact)
    name = re.compile(rf"\b(?:{re.escape(who.name)}|{re.escape(who.id)})\b")
    named = re.compile(rf"\b(?:{re.escape(who.id)}|all)\.{re.escape(fact)}\b")
    found = []
    for path, text in texts.items():
        for number, line in enumerate(text.split("\n"), start=1):
            if (
                f"{fact}: {value}" in line
                and "facts:" in line
                and path.endswith("/index.md")
                and _is_of(who, text, number)
            ):
                continue  # where the fact itself is written
            sort = _sort(line, name, named, value, sums)
            if sort:
                found.append(Line(path, number, line.strip(), sort))
    order = list(HEADINGS)
    return sorted(found, key=lambda line: order.index(line.sort))


def _sort(line: str, name: re.Pattern[str], named: re.Pattern[str], value: object, sums: frozenset[int]) -> Sort | None:
    typed = _NO_TEXT.sub("", NAME.sub("", line))
    is_named = any(named.search(match[1]) for match in NAME.finditer(line))
    if isinstance(value, str):
        return "with a number" if value.lower() in typed.lower() else "by name" if is_named else None
    numbers = set(numbers_in(typed))
    if is_named:
        return "by name, and more" if value in numbers or numbers & sums else "by name"
    if not numbers:
        return None
    if name.search(typed):
        return "with a number"
    return "the same number" if value in numbers else "a sum" if numbers & sums else None


def numbers_in(text: str) -> Iterator[int]:
    """The whole numbers of a text, in digits and in words."""
    for match in _NUMBER.finditer(text):
        yield int(match[1]) if match[1] else number_in_words(match[2].lower())


def _sums(book: Book, who: Character, fact: str) -> frozenset[int]:
    """What the number makes with one other of the cast, with two, … and with all."""
    values = [one.facts[fact] for one in book.cast if one.id != who.id and fact in one.facts]
    own, others = who.facts[fact], [value for value in values if isinstance(value, int) and not isinstance(value, bool)]
    if not isinstance(own, int) or isinstance(own, bool):
        return frozenset()
    return frozenset(own + sum(some) for many in range(1, len(others) + 1) for some in combinations(others, many))


def _is_of(who: Character, text: str, number: int) -> bool:
    """Whether the entry of the cast around a line is this character's."""
    above: Sequence[str] = text.split("\n")[:number]
    return next((line for line in reversed(above) if "id:" in line), "").strip().endswith(f"id: {who.id}")
