"""The signs of arithmetic, and how each kind of text types them: a sign more, or a word for one, is a row more."""

from __future__ import annotations

import operator
import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from ..model.prose import VULGAR
from ..model.quantity import UNITS
from .number import NUMBER

LEVELS: tuple[tuple[str, ...], ...] = (("+", "−", "less than"), ("×", "÷", "of"), ("/",))
"""The operations by how tightly they hold, loosest first; one level goes from left to right."""
OPERATE: Mapping[str, Callable[[Any, Any], Any]] = {
    "+": operator.add,
    "−": operator.sub,
    "less than": lambda less, number: number - less,
    "×": operator.mul,
    "of": operator.mul,
    "÷": operator.truediv,
    "/": operator.truediv,
}
COMPARE: Mapping[str, Callable[[Any, Any], bool]] = {
    "=": operator.eq,
    "≠": operator.ne,
    "<": operator.lt,
    ">": operator.gt,
    "≤": operator.le,
    "≥": operator.ge,
}
RELATIONS = frozenset((*COMPARE, "≈"))
"""The signs that may stand between two sides; whether ≈ holds is no matter of exact numbers."""
_AS_WRITTEN = {sign: sign for sign in ("+", "−", "×", "÷", "of", "=", "≠", "<", ">")}
_AS_TYPED = {**_AS_WRITTEN, "-": "−", "*": "×", "!=": "≠"}
UNIT = "|".join(sorted((re.escape(unit) for unit in UNITS if unit != "£"), key=len, reverse=True))
"""The pattern of a unit of measure that stands after its number."""
AMOUNT = rf"£?(?:{NUMBER})(?:[ ]?(?:{UNIT})(?!\w))?"
"""The pattern of a number with or without a unit."""
_LETTER = rf"[^\W\d_{''.join(VULGAR)}]"
_WORD = rf"{_LETTER}[^\W_]*(?:[’'-]\w+)*"


@dataclass(frozen=True, eq=False)
class Dialect:
    """How one kind of text writes arithmetic."""

    signs: Mapping[str, str]
    """Each way of typing a sign, and the sign that is meant."""
    gaps: str = ""
    """The letters that make a gap."""
    digits: bool = False
    """Whether a gap inside a number stands for a digit; where not, it parts two numbers."""
    units: bool = True
    thousands: bool = True
    """Whether a comma may stand in a number; where not, it parts the numbers of a list."""
    word: str = _WORD
    quoted: bool = False
    """Whether words in quotation marks are a value."""
    capitals: bool = False
    """Whether a sign in words may begin with a capital, as a sentence does."""


@lru_cache(maxsize=64)
def token_pattern(dialect: Dialect, names: tuple[str, ...] = ()) -> re.Pattern[str]:
    """The pattern of a dialect's tokens; ``names`` stand for numbers, small letters or large."""
    number = NUMBER if dialect.thousands else r"\d+[ ]\d+/\d+|\d+/\d+|\d+(?:\.\d+)?"
    value, parts = rf"(?P<number>{number})", []
    if names:
        parts.append(rf"(?P<name>(?i:{_either(names)}))(?![^\W_])")
    in_words = [sign for sign in dialect.signs if sign[0].isalpha()]
    spoken = rf"(?:{_either(in_words, dialect.capitals)})(?!\w)"
    parts.append(rf"(?P<word>(?!{spoken}){dialect.word})")  # first, for most tokens are
    if gap := re.escape(dialect.gaps):
        if dialect.digits:
            parts.append(rf"(?P<digits>(?=\d*[{gap}])(?=[{gap}]*\d)[\d{gap}]{{2,8}})")
        value += "|(?P<gap>" + "|".join(f"{re.escape(letter)}+" for letter in dialect.gaps) + ")"
    parts.append(rf"(?P<pound>£?)(?:{value})(?:[ ]?(?P<unit>{UNIT})(?!\w))?" if dialect.units else value)
    if dialect.quoted:
        parts.append(r"(?P<quoted>\"[^\"]*\"|“[^”]*”|'[^']*')")
    typed = [sign for sign in dialect.signs if not sign[0].isalpha()]
    parts.append(rf"(?P<sign>{_either(typed)}|{spoken})")
    parts += [r"(?P<bracket>[()])", r"(?P<other>\S)"]
    return re.compile("|".join(parts))


def _either(texts: Iterable[str], capitals: bool = False) -> str:
    either = [re.escape(text) for text in sorted(texts, key=len, reverse=True)]
    # A class of two letters is passed over far faster than a letter of either size.
    return "|".join(f"[{text[0]}{text[0].upper()}]{text[1:]}" if capitals else text for text in either)


PROSE = Dialect(_AS_WRITTEN, gaps="_?□")
"""Number sentences as a page prints them."""
SPOKEN = Dialect(
    {
        **_AS_TYPED,
        **{sign: sign for sign in ("≤", "≥", "≈")},
        **{"<=": "≤", ">=": "≥", "–": "−", "/": "÷", "x": "×", "and": "+"},
        **dict.fromkeys(("plus", "add", "added to", "more than"), "+"),
        **dict.fromkeys(("minus", "take away", "subtract"), "−"),
        **dict.fromkeys(("less than", "fewer than"), "less than"),
        **dict.fromkeys(("times", "multiplied by", "lots of", "groups of", "sets of", "rows of"), "×"),
        **dict.fromkeys(("divided by", "shared between", "shared among", "shared by"), "÷"),
        **{f"shared equally {word}": "÷" for word in ("between", "among", "by")},
        "out of": "/",
        **{f"{verb}{equal}": "=" for verb in ("is", "are") for equal in ("", " equal to", " the same as", " worth")},
        **dict.fromkeys(("equals", "makes", "make", "leaves", "gives", "comes to"), "="),
        **dict.fromkeys(("is not equal to", "are not equal to", "does not equal"), "≠"),
    },
    gaps="_?□",
    capitals=True,
)
"""Number sentences in running text, typed by any keyboard or told in words; see ``spoken.py``."""
GAPPED = Dialect(_AS_TYPED, gaps="_?□", digits=True)
"""A number sentence with gaps for numbers, digits or signs."""
COMPARED = Dialect({**_AS_TYPED, "/": "/", "?": "?"}, gaps="_", digits=True)
"""Sides compared; ``?`` stands where the sign of the comparison is missing, and ``1/___`` is a fraction with a gap."""
RULES = Dialect(
    {
        **{sign: sign for sign in ("+", "−", "×", "÷", "=", "≠", "<", ">", "≤", "≥", ",", "and", "or", "not")},
        "-": "−",
        "*": "×",
        "/": "÷",
        "!=": "≠",
        "<=": "≤",
        ">=": "≥",
    },
    units=False,
    thousands=False,
    word=rf"(?:_|{_LETTER})\w*",
    quoted=True,
)
"""A rule about numbers and facts."""
