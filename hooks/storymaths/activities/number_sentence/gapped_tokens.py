"""The pieces of number sentences with gaps: numbers, names of characters, signs, and gaps for any of them.

A gap is ``___`` (``?`` and ``□`` do as well). Where a number belongs it stands for a number; where a sign
belongs, for a sign; inside a number, as in ``7?8``, for a digit.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from ...model.prose import VULGAR
from ...model.quantity import UNITS
from ...parse.number_sentence import exact

Rational = int | Fraction
MOST_LETTERS = 120
_PLAIN = {"-": "−", "*": "×", "!=": "≠"}
_V = "".join(VULGAR)
_UNIT = "|".join(sorted((re.escape(unit) for unit in UNITS if unit != "£"), key=len, reverse=True))
_NUMBER = rf"\d+ ?[{_V}]|[{_V}]|\d+ \d+/\d+|\d+/\d+|\d{{1,3}}(?:,\d{{3}})+(?:\.\d+)?(?!\d)|\d+(?:\.\d+)?"
_TOKEN = re.compile(
    rf"(?P<digits>(?=\d*[?_□])(?=[?_□]*\d)[\d?_□]{{2,8}})"
    rf"|(?P<pound>£?)(?:(?P<number>{_NUMBER})|(?P<gap>_+|[?]+|□))(?:[ ]?(?P<unit>{_UNIT})(?!\w))?"
    r"|(?P<sign>[+−×÷*-]|of\b)|(?P<relation>[=≠<>]|!=)|(?P<bracket>[()])"
)
_A_WORD = re.compile(r"\w[\w’'-]*|.")


class NotASentence(ValueError):
    """The text does not follow the grammar; the message says so to a teacher."""


@dataclass(frozen=True, slots=True)
class Token:
    """A piece of a sentence: a number, name, sign, bracket, or a gap for one of these."""

    kind: str
    text: str
    value: Rational = 0
    """A known number, or how much one of a gap's unit is worth; in base units where there is a unit."""
    unit: str = ""


def read_tokens(text: str, names: Mapping[str, Token]) -> tuple[Token, ...]:
    """The pieces of a sentence; a gap where a sign belongs is a ``sign-gap``. Raises ``NotASentence``.

    ``names`` gives the token for each way of writing a character, such as its id and its name.
    """
    if len(text) > MOST_LETTERS:
        raise NotASentence(f"a sentence of {len(text)} letters is too long to read; write it in fewer than 120")
    tokens: list[Token] = []
    at = 0
    while at < len(text):
        if text[at].isspace():
            at += 1
            continue
        after_value = bool(tokens) and (
            tokens[-1].kind in ("number", "name", "gap", "digits") or tokens[-1].text == ")"
        )
        token, at = _next_token(text, at, names, after_value)
        tokens.append(token)
    return tuple(tokens)


def _next_token(text: str, at: int, names: Mapping[str, Token], after_value: bool) -> tuple[Token, int]:
    for name in sorted(names, key=len, reverse=True):
        end = at + len(name)
        if text[at:end].lower() == name.lower() and not text[end : end + 1].isalnum():
            return names[name], end
    match = _TOKEN.match(text, at)
    if match is None:
        word = _A_WORD.match(text, at)
        raise NotASentence(f'"{word.group() if word else text[at]}" is neither a number, a sign nor one of the cast')
    unit = match["unit"] or ("£" if match["pound"] else "")
    worth: Rational = UNITS[unit][1] if unit else 1
    if match["digits"]:
        return Token("digits", re.sub(r"[?_□]", "_", match["digits"])), match.end()
    if match["gap"]:
        kind = "sign-gap" if after_value and not unit else "gap"
        return Token(kind, "___", worth, unit), match.end()
    if match["number"]:
        return Token("number", match.group(), whole_if_can(_number(match["number"]) * worth), unit), match.end()
    kind = next(name for name in ("sign", "relation", "bracket") if match[name])
    return Token(kind, _PLAIN.get(match.group(), match.group())), match.end()


def _number(text: str) -> Fraction:
    if len(text) > 14:
        raise NotASentence(f"{text[:12]}… is beyond ten million, the largest number primary schools meet")
    try:
        number = Fraction(exact(text))
    except ZeroDivisionError:
        raise NotASentence(f"{text} has nought under the line") from None
    if number > 10_000_000:
        raise NotASentence(f"{text} is beyond ten million, the largest number primary schools meet")
    return number


def whole_if_can(number: Fraction) -> Rational:
    """A whole number as an int, which is worked with faster."""
    return number.numerator if number.denominator == 1 else number
