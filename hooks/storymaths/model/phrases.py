"""Phrases that sentences are matched with: words, choices, what may be left out, and places for what is told."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from functools import cached_property
from typing import NamedTuple, TypeAlias

from .fields import Strict, Text


class Words(NamedTuple):
    """One of some words."""

    any_of: frozenset[str]


class Slot(NamedTuple):
    """A place for something told, by its letter: ``A`` a number, ``T`` a time, ``~`` up to three words for things."""

    letter: str


class Choice(NamedTuple):
    """One of some rows of pieces; an empty row is nothing at all."""

    rows: tuple[Row, ...]
    by_word: Mapping[str, tuple[Row, ...]]
    """The rows that begin with a word."""
    others: tuple[Row, ...]
    """The rows that may begin with something told, and the empty one."""
    firsts: frozenset[str]
    """What it may begin with; "" where it may be nothing."""
    need: frozenset[str]
    """Words and letters of which a sentence must hold one; none where it may do without."""
    numbers: int
    """How many numbers it tells at least."""

    @classmethod
    def of(cls, rows: tuple[Row, ...]) -> Choice:
        """Rows made ready to be looked up by their first word."""
        by_word: dict[str, tuple[Row, ...]] = {}
        others: list[Row] = []
        each_first = [_firsts(row) for row in rows]
        for row, firsts in zip(rows, each_first, strict=True):
            for word in firsts:
                if word and not (word.isupper() or word == "~"):
                    by_word[word] = (*by_word.get(word, ()), row)
            if any(word == "" or word.isupper() or word == "~" for word in firsts):
                others.append(row)
        needs = [min(_needs(row), key=commonness, default=frozenset[str]()) for row in rows]
        need = frozenset[str]().union(*needs) if all(needs) else frozenset[str]()
        return cls(rows, by_word, tuple(others), frozenset().union(*each_first), need, min(map(_numbers_of, rows)))


_NUMBERS: Mapping[str, int] = {**dict.fromkeys("ABCDE", 1), "L": 2, "K": 2, "H": 3, "T": 1, "U": 1}
"""How many numbers each letter for numbers stands for, at least."""
_COMMON = {
    **dict.fromkeys("has have up so or all by more same out 4 6 there they".split(), 3),
    **dict.fromkeys("of is in to with on for it are each that at as from then : 3 10 5".split(), 10),
    **dict.fromkeys("and the 1 a 2 ,".split(), 25),
}
"""About how many times as common as others some words are where numbers are told."""


_PLAIN = frozenset("ABCDEKLH~")
"""The letters that every sentence with numbers may tell."""


Piece: TypeAlias = Words | Slot | Choice
Row: TypeAlias = tuple[Piece, ...]
_PIECE = re.compile(r"<[\w-]+>|[A-Z~](?![\w’'])|[()\[\]|]|[\w’'-]+|[,;:=+×÷−-]")


_FIGURES = {
    word: str(count) for count, word in enumerate("one two three four five six seven eight nine ten".split(), start=1)
}
"""Numbers of a sentence stand in figures when it is read."""


class SaidPhrases(Strict):
    """Ways of saying one thing, and what holds where it is true: a number sentence of the letters, or a named check."""

    said: tuple[Text, ...]
    holds: Text = ""
    check: Text = ""
    worked: bool = False
    """Whether one of its numbers must be worked out."""
    bare: bool = False
    """Whether its numbers must stand without what they count: five flags back from 80 may be five tens."""
    measured: bool = False
    """Whether its numbers must be amounts of one kind: a metre, and centimetres; a whole, and quarters."""
    by_ones: bool = False
    """Whether nothing in the sentence may say that it is counted otherwise than up in ones."""


class Phrase(NamedTuple):
    """A phrase made ready."""

    row: Row
    told: SaidPhrases
    needs: tuple[frozenset[str], ...]
    """Sets of words, and of letters such as ``W`` for a day, of each of which a sentence must hold one."""
    numbers: int
    """How many numbers a sentence must hold at least."""
    number: int = 0
    """Its place among all."""

    def firsts(self, at: int = 0) -> frozenset[str]:
        """The words it may go on with from a piece; ``A`` where a number may come."""
        return _firsts(self.row[at:])


class Phrases(Strict):
    """``site_data/phrases.yaml``."""

    source: Text
    macros: Mapping[str, Text]
    no_things: tuple[Text, ...]
    sets: tuple[Text, ...]
    all_sorts: tuple[Text, ...]
    measures: Mapping[str, tuple[Text, Text]]
    values: tuple[SaidPhrases, ...]
    claims: tuple[SaidPhrases, ...]

    @cached_property
    def no_thing(self) -> frozenset[str]:
        """Words that are never what is counted."""
        return frozenset(" ".join(self.no_things).split())

    @cached_property
    def of_sets(self) -> frozenset[str]:
        """Words for several things together, such as teams."""
        return frozenset(" ".join(self.sets).split())

    @cached_property
    def of_all_sorts(self) -> frozenset[str]:
        """Words for things of several sorts, such as children."""
        return frozenset(" ".join(self.all_sorts).split())

    @cached_property
    def words_of_measures(self) -> frozenset[str]:
        """The words of all names of measures."""
        return frozenset(" ".join(self.measures).split())

    def ready(self, told: tuple[SaidPhrases, ...]) -> Iterator[Phrase]:
        """Phrases as rows of pieces."""
        for each in told:
            for text in each.said:
                for row in _variants(self._row(text)):
                    yield Phrase(row, each, tuple(_needs(row)), _numbers_of(row))

    @cached_property
    def _macros(self) -> dict[str, Row]:
        return {}

    def _row(self, text: str) -> Row:
        row, at = self._choice(_PIECE.findall(text), 0)
        return row if at else ()

    def _choice(self, pieces: list[str], at: int) -> tuple[Row, int]:
        """The rows up to the bracket that closes, as one row."""
        rows: list[list[Piece]] = [[]]
        while at < len(pieces) and pieces[at] not in ")]":
            piece, at = pieces[at], at + 1
            if piece == "|":
                rows.append([])
            elif piece in "([":
                inner, at = self._choice(pieces, at)
                at += 1
                if inner == (Slot("~"),) and rows[-1] and isinstance(rows[-1][-1], Slot):
                    continue  # a number takes in what it counts
                rows[-1] += [Choice.of((inner, ()))] if piece == "[" else inner
            elif piece[0] == "<":
                rows[-1] += self._macro(piece[1:-1])
            elif len(piece) == 1 and (piece.isupper() or piece == "~"):
                rows[-1].append(Slot(piece))
            else:
                rows[-1].append(Words(frozenset((piece, _FIGURES.get(piece, piece)))))
        return _joined(rows), at

    def _macro(self, name: str) -> Row:
        if name not in self._macros:
            self._macros[name] = self._row(self.macros[name])
        return self._macros[name]


def _joined(rows: list[list[Piece]]) -> Row:
    """Rows to choose from; words alone become one set of words, which is looked up at once."""
    if len(rows) == 1:
        return tuple(rows[0])
    alone = [row[0].any_of for row in rows if len(row) == 1 and isinstance(row[0], Words)]
    longer = [tuple(row) for row in rows if not (len(row) == 1 and isinstance(row[0], Words))]
    words: list[Row] = [(Words(frozenset().union(*alone)),)] if alone else []
    every = tuple(sorted(longer, key=len, reverse=True)) + tuple(words)
    return every[0] if len(every) == 1 else (Choice.of(every),)


def _variants(row: Row) -> Iterator[Row]:
    """A row with what may be left out at its start, and without, where a place may come first."""
    first, rest = row[0], row[1:]
    if isinstance(first, Choice) and () in first.rows and any(word.isupper() for word in _firsts(row)):
        yield from _variants(rest)
        further = tuple(each for each in first.rows if each)
        yield ((*further[0], *rest) if len(further) == 1 else (Choice.of(further), *rest))
    else:
        yield row


def _needs(row: Row) -> Iterator[frozenset[str]]:
    for piece in row:
        match piece:
            case Words(any_of=words):
                yield words
            case Slot(letter=letter) if letter not in _PLAIN:
                yield frozenset((letter,))
            case Choice(need=need) if need:
                yield need


def commonness(words: frozenset[str]) -> int:
    """How likely a sentence is to hold one of some words."""
    return sum(_COMMON.get(word, 1) for word in words)


def _numbers_of(row: Row) -> int:
    return sum(
        piece.numbers if isinstance(piece, Choice) else _NUMBERS.get(piece.letter, 0) if isinstance(piece, Slot) else 0
        for piece in row
    )


def _firsts(row: Row) -> frozenset[str]:
    found: set[str] = set()
    for piece in row:
        match piece:
            case Words(any_of=words):
                return frozenset(found | words)
            case Slot(letter=letter):
                found.add(letter)
                if letter != "~":
                    return frozenset(found)
            case Choice(firsts=firsts):
                found |= firsts
                if "" not in found:
                    return frozenset(found)
                found.discard("")
    return frozenset(found | {""})
