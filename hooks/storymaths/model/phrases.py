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


Piece: TypeAlias = Words | Slot | Choice
Row: TypeAlias = tuple[Piece, ...]
_PIECE = re.compile(r"<[\w-]+>|[A-Z~](?![\w’'])|[()\[\]|]|[\w’'-]+|[,:=.]")


class SaidPhrases(Strict):
    """Ways of saying one thing, and what holds where it is true: a number sentence of the letters, or a named check."""

    said: tuple[Text, ...]
    holds: Text = ""
    check: Text = ""
    of: Text = ""


class Phrase(NamedTuple):
    """A phrase made ready."""

    row: Row
    told: SaidPhrases

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

    def ready(self, told: tuple[SaidPhrases, ...]) -> Iterator[Phrase]:
        """Phrases as rows of pieces."""
        for each in told:
            for text in each.said:
                yield Phrase(self._row(text), each)

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
                rows[-1] += [Choice((inner, ()))] if piece == "[" else inner
            elif piece[0] == "<":
                rows[-1] += self._macro(piece[1:-1])
            elif len(piece) == 1 and (piece.isupper() or piece == "~"):
                rows[-1].append(Slot(piece))
            else:
                rows[-1].append(Words(frozenset((piece,))))
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
    return every[0] if len(every) == 1 else (Choice(every),)


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
            case Choice(rows=rows):
                inner = [_firsts(each) for each in rows]
                found |= frozenset().union(*inner)
                if "" not in found:
                    return frozenset(found)
                found.discard("")
    return frozenset(found | {""})
