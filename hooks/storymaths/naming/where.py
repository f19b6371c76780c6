"""Every line of a book's pages that a fact of its cast stands in: what follows it by itself, and what somebody must look at.

Surest first: lines that name the fact; that name the character with a number, with a time where the fact is one, or with its
words; that hold its number, time or words; that hold the number it makes with others of the cast, or the time between it and
another. It lists too much rather than too little: what it leaves out is left to nobody.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from itertools import combinations
from typing import Literal, NamedTuple

from ..claims.amounts import InFigures
from ..claims.clock import SPAN, TIME, are_alike, length_of, minutes_of
from ..claims.number_words import NUMBER_IN_WORDS, number_in_words
from ..model.book import Book, Character, FactValue
from ..model.names import NAME

Sort = Literal["by name", "by name, and more", "with a number", "the same number", "a sum"]
HEADINGS: Mapping[Sort, str] = {
    "by name": "These name the fact, and follow it by themselves",
    "by name, and more": "These name the fact, and hold a number as well that does not follow",
    "with a number": "These name {name} and hold a number, and do not follow",
    "the same number": "These hold the number {value}, of {name} or of something else",
    "a sum": "These hold a number that {value} makes with others of the cast",
}
HEADINGS_OF_WORDS: Mapping[Sort, str] = {
    "by name": HEADINGS["by name"],
    "by name, and more": "These name the fact, and say it in words as well that do not follow",
    "with a number": "These name {name} and say “{value}” or a time, and do not follow",
    "the same number": "These say “{value}”, of {name} or of something else",
    "a sum": "These hold the time between {value} and another of the cast",
}
"""The same where the fact is a word or a time."""
_NUMBER = re.compile(
    rf"(?<![\w.£])(?:(\d{{1,3}}(?:,\d{{3}})+(?!\d)|\d+)(?![\d:]|\.\d)|({NUMBER_IN_WORDS}))|£(\d+)\.(\d\d)(?!\d)",
    re.IGNORECASE,
)
_TIME, _SPAN = re.compile(TIME), re.compile(SPAN)
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
    value = who.facts[fact]
    name = re.compile(rf"\b(?:{re.escape(who.name)}|{re.escape(who.id)})\b")
    named = re.compile(rf"\b(?:{re.escape(who.id)}|all)\.{re.escape(fact)}\b")
    itself = re.compile(rf"facts:.*\b{re.escape(fact)}: [\"']?{re.escape(str(value))}(?!\w)")
    in_line: _Number | _Words = (
        _Words(value, _spans(book, who, fact)) if isinstance(value, str) else _Number(value, _sums(book, who, fact))
    )
    found = []
    for path, text in texts.items():
        for number, line in enumerate(text.split("\n"), start=1):
            if path.endswith("/index.md") and itself.search(line) and _is_of(who, text, number):
                continue  # where the fact itself is written
            typed = _NO_TEXT.sub("", NAME.sub("", line))
            is_named = any(named.search(match[1]) for match in NAME.finditer(line))
            sort = in_line.sort(typed, is_named, bool(name.search(typed)))
            if sort:
                found.append(Line(path, number, line.strip(), sort))
    order = list(HEADINGS)
    return sorted(found, key=lambda line: order.index(line.sort))


class _Number(NamedTuple):
    """A fact that is a number, or true or false, as it stands in lines."""

    value: FactValue
    sums: frozenset[int]

    def sort(self, typed: str, is_named: bool, has_name: bool) -> Sort | None:
        numbers = set(numbers_in(typed))
        if is_named:
            return "by name, and more" if self.value in numbers or numbers & self.sums else "by name"
        if not numbers:
            return None
        if has_name:
            return "with a number"
        return "the same number" if self.value in numbers else "a sum" if numbers & self.sums else None


class _Words(NamedTuple):
    """A fact that is a word or a time, as it stands in lines."""

    value: str
    spans: frozenset[int]

    def sort(self, typed: str, is_named: bool, has_name: bool) -> Sort | None:
        says, lasting = holds(typed, self.value), _lengths(typed) if self.spans else set[int]()
        if is_named:
            return "by name, and more" if says else "by name"
        if has_name and (says or (self.spans and (lasting or _TIME.search(_plain(typed))))):
            return "with a number"
        return "the same number" if says else "a sum" if lasting & self.spans else None


def holds(text: str, value: FactValue) -> bool:
    """Whether a text says a number, a word or a time of the clock, however it says it."""
    if not isinstance(value, str):
        return value in numbers_in(text)
    if value.lower() in text.lower():
        return True
    wanted = _minutes(value)
    times = map(minutes_of, _TIME.findall(_plain(text))) if wanted else ()
    return any(time is not None and wanted is not None and are_alike(time, wanted) for time in times)


def numbers_in(text: str) -> Iterator[int]:
    """The whole numbers of a text, in digits and in words; pounds with pence as pence."""
    for figures, words, pounds, pence in _NUMBER.findall(text):
        yield (
            int(pounds + pence)
            if pounds
            else int(figures.replace(",", ""))
            if figures
            else number_in_words(words.lower())
        )


def _plain(text: str) -> str:
    """A text as times are found in it: in small letters, its numbers in figures."""
    return InFigures.of(text.lower()).text


def _minutes(value: FactValue | None) -> tuple[int, bool] | None:
    return minutes_of(value) if isinstance(value, str) and _TIME.fullmatch(value) else None


def _lengths(text: str) -> set[int]:
    """Each number of a text, and the minutes of each length of time."""
    return {*numbers_in(text), *(length_of(match[0]) for match in _SPAN.finditer(_plain(text)))}


def _spans(book: Book, who: Character, fact: str) -> frozenset[int]:
    """The minutes between a time and each other of the same character, or of the same fact."""
    own = _minutes(who.facts[fact])
    others = (*who.facts.values(), *(one.facts.get(fact) for one in book.cast))
    times = [time[0] for time in map(_minutes, others) if time]
    return frozenset(abs(own[0] - time) for time in times if time != own[0]) if own else frozenset()


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
