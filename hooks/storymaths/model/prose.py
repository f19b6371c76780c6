"""All the words of a page in one string, so that a rule reads it once; its words and numbers found once."""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property
from operator import itemgetter
from typing import NamedTuple

from .problem import Place

Loc = tuple[str | int, ...]
"""The way to a value in front matter: keys and list positions, as in ``("reads", 0, "pages")``."""

BODY: Loc = ("[body]",)
"""The text under the front matter."""

VULGAR = {
    "½": Fraction(1, 2), "⅓": Fraction(1, 3), "⅔": Fraction(2, 3), "¼": Fraction(1, 4), "¾": Fraction(3, 4),
    "⅕": Fraction(1, 5), "⅖": Fraction(2, 5), "⅗": Fraction(3, 5), "⅘": Fraction(4, 5), "⅙": Fraction(1, 6),
    "⅚": Fraction(5, 6), "⅛": Fraction(1, 8), "⅜": Fraction(3, 8), "⅝": Fraction(5, 8), "⅞": Fraction(7, 8),
}  # fmt: skip

_LETTERS_ONLY = bytes(code if chr(code) in "abcdefghijklmnopqrstuvwxyz" else 32 for code in range(256))
_SIGN = re.compile(r"[+−=<>×÷≠²³]")
_NUMERAL = re.compile(rf"[0-9{''.join(VULGAR)}][0-9,./]*")
_WHOLE = re.compile(r"(\d{1,3}(?:,\d{3})+|\d+)(?:\.(\d+))?")
_FRACTION = re.compile(r"(\d+)/(\d+)")


class Passage(NamedTuple):
    """A stretch of prose: where it stands, and the year it is written for if not the page's own."""

    start: int
    loc: Loc
    year: int | None
    line: int = 0
    """The line of its file; nought for front matter, whose places are found by way of keys."""


class Numeral(NamedTuple):
    """A number written in figures: a whole number with any decimals, or a fraction."""

    start: int
    text: str
    whole: int
    """Nought for a fraction."""
    places: int
    below: int
    """The number under the line of a fraction; nought otherwise."""

    @property
    def end(self) -> int:
        """Where it ends."""
        return self.start + len(self.text)


@dataclass(frozen=True)
class Prose:
    """The prose of a page and the passages it is made of."""

    text: str
    parts: Sequence[Passage]
    """Its larger parts in order: each field of the front matter, each year of its bends, the body."""
    find_passages: Callable[[], Sequence[Passage]]
    """Every single text and line; only a problem needs to know so closely."""

    @cached_property
    def _starts(self) -> list[int]:
        return [part.start for part in self.parts]

    def part_at(self, offset: int) -> Passage:
        """The larger part that holds a position in ``text``."""
        return self.parts[bisect_right(self._starts, offset) - 1]

    @cached_property
    def _passages(self) -> Sequence[Passage]:
        return self.find_passages()

    def passage_at(self, offset: int) -> Passage:
        """The text or line that holds a position in ``text``."""
        return self._passages[bisect_right(self._passages, offset, key=itemgetter(0)) - 1]

    def before_on_line(self, offset: int) -> str:
        """What stands before a position in ``text``, in the same text or on the same line."""
        at = bisect_right(self._passages, offset, key=itemgetter(0)) - 1
        line = self._passages[at].line
        while line and at and self._passages[at - 1].line == line:  # the cells of a table
            at -= 1
        return self.text[self._passages[at].start : offset]

    @cached_property
    def lowered(self) -> str:
        """The text in small letters, character for character."""
        lowered = self.text.lower()
        # A few capitals, such as İ, are longer when small; positions would no longer hold.
        return (
            lowered
            if len(lowered) == len(self.text)
            else "".join(c if len(c.lower()) > 1 else c.lower() for c in self.text)
        )

    @cached_property
    def words(self) -> frozenset[str]:
        """Every word of the prose in small letters: a quick way to know that a phrase cannot be there."""
        return words_of(self.lowered)

    @cached_property
    def signs(self) -> Sequence[tuple[int, str]]:
        """Every sign of an operation or a relation, and where it stands."""
        return [(match.start(), match.group()) for match in _SIGN.finditer(self.text)]

    @cached_property
    def numerals(self) -> Sequence[Numeral]:
        """Every number in figures, in order; codes and times such as 2AS-3 and 10:30 are left to the reader."""
        found = []
        for match in _NUMERAL.finditer(self.text):
            text = match.group().rstrip(",./")
            if text.isdecimal():  # nearly all are
                found.append(Numeral(match.start(), text, int(text), 0, 0))
            elif numeral := _numeral(match.start(), text):
                found.append(numeral)
        return found


class PlacedText(NamedTuple):
    """A text that an author wrote, and what finds the place of the words that start somewhere in it."""

    text: str
    place: Callable[[int, str], Place]


def words_of(lowered: str) -> frozenset[str]:
    """Every run of the letters a to z in a text in small letters."""
    # A table over bytes splits twice as fast as a pattern does.
    return frozenset(lowered.encode("ascii", "replace").translate(_LETTERS_ONLY).decode("ascii").split())


def _numeral(start: int, text: str) -> Numeral | None:
    if text[0] in VULGAR:
        return Numeral(start, text[0], 0, 0, VULGAR[text[0]].denominator)
    fraction = _FRACTION.fullmatch(text)
    if fraction:
        return Numeral(start, fraction.group(), 0, 0, int(fraction.group(2)))
    whole = _WHOLE.match(text)
    if whole is None:
        return None
    return Numeral(start, whole.group(), int(whole.group(1).replace(",", "")), len(whole.group(2) or ""), 0)
