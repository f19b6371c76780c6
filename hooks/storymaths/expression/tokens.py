"""The pieces of arithmetic in a text, each with its place: numbers, gaps, names, signs, brackets and words."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from typing import Literal, NamedTuple

from ..model.quantity import UNITS
from .number import Rational, exact, whole_if_can
from .signs import RELATIONS, Dialect, token_pattern

TokenKind = Literal[
    "number", "broken", "gap", "sign-gap", "digits", "name", "quoted", "sign", "relation", "bracket", "word", "other"
]  # fmt: skip
_RELATIONS = RELATIONS | {"?"}
VALUES = frozenset(("number", "broken", "gap", "digits", "name"))
"""What stands for a number. One with nought under its line is ``broken``."""


class Token(NamedTuple):
    """A piece of a text."""

    kind: TokenKind
    text: str
    """As meant: a typed ``*`` is ``×``, a gap ``___``, one for a digit ``_``."""
    value: Rational = 0
    """A known number, or how much one of a gap's unit is worth; in base units where there is a unit."""
    unit: str = ""
    start: int = 0
    end: int = 0
    number: str = ""
    """A number as written, without its unit."""
    things: str = ""
    """What is counted, in running text: ``bricks`` where 3 red bricks are told."""
    typed: str = ""
    """How a sign stands in running text, where that is by a word or another sign."""

    @property
    def amount(self) -> Rational:
        """A known number as written, not in base units."""
        return exact(self.number)


def read_tokens(
    text: str, dialect: Dialect, names: Mapping[str, Token] | None = None, start: int = 0, end: int | None = None
) -> Iterator[Token]:
    """The pieces of a text between two places; a gap where a sign belongs is a ``sign-gap``.

    ``names`` gives the token for each way of writing a character, such as its id and its name.
    """
    after_value = False
    known = {name.lower(): token for name, token in names.items()} if names else {}
    pattern = token_pattern(dialect, tuple(names or ()))
    for match in pattern.finditer(text, start, len(text) if end is None else end):
        group, (low, high) = match.lastgroup, match.span()
        if group == "number" and (number := match.group()).isdecimal():  # most values are
            token = Token("number", number, int(number), "", low, high, number)
        elif group == "word":
            token = Token("word", match.group(), 0, "", low, high)
        elif group == "sign":
            sign = dialect.signs[match.group().lower() if dialect.capitals else match.group()]
            token = Token("relation" if sign in _RELATIONS else "sign", sign, 0, "", low, high)
        elif group in ("number", "unit", "gap", "pound"):
            token = _value(match, after_value)
        elif group == "digits":
            token = Token("digits", "".join(c if c.isdigit() else "_" for c in match.group()), 0, "", low, high)
        elif group == "name":
            token = known[match.group().lower()]._replace(start=low, end=high)
        elif group == "quoted":
            token = Token("quoted", match.group()[1:-1], 0, "", low, high)
        else:
            token = Token("bracket" if group == "bracket" else "other", match.group(), 0, "", low, high)
        after_value = token.kind in VALUES or token.text == ")"
        yield token


def _value(match: re.Match[str], after_value: bool) -> Token:
    """A number or a gap, with its unit."""
    shown, number = match.group(), match["number"]
    unit = match["unit"] if match.lastgroup == "unit" else "£" if shown[0] == "£" else ""
    worth: Rational = UNITS[unit][1] if unit else 1
    if not number:
        return Token("sign-gap" if after_value and not unit else "gap", "___", worth, unit, *match.span())
    try:
        value = exact(number)
    except ZeroDivisionError:
        return Token("broken", shown, 0, unit, *match.span(), number)
    return Token("number", shown, whole_if_can(value * worth), unit, *match.span(), number)
