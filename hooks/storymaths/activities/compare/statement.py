"""One statement of a comparison: its sides and signs, the names in it, and the one gap it may have."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from ...check.suggestion import did_you_mean
from ...model.document import Loc
from ...model.quantity import UNITS, Quantity
from ...parse.number_sentence import value_of
from ..kind import Unsolvable

GAP = "___"
SIGN_GAP = "?"
_LONGEST = 120
_RELATION = re.compile(r"\s*([=≠<>?])\s*")
_GAP = re.compile(r"_+")
CALCULATION = re.compile(r"(?<=[\w)£_]) ?[+−×÷]|\bof\b")
"""A sign of calculation, told from the − before a number below nought."""
_UNIT = re.compile(rf"(?<=\d)[ ]?({'|'.join(sorted(filter('£'.__ne__, UNITS), key=len, reverse=True))})\b|(£)")
_DIGIT_GAP = re.compile(r"[\d.]_|_[\d.]")
_WORD = re.compile(r"[A-Za-z][A-Za-z'’-]*(?: [A-Za-z][A-Za-z'’-]*)*")
_BARE_NUMBER = re.compile(r"\d[\d,]*(?:\.\d+)?")
_AS_SIGNS = (("!=", "≠"), ("*", "×"), (" - ", " − "))
_KNOWN_WORDS = frozenset({*UNITS, "of"})


@dataclass(frozen=True, slots=True)
class Statement:
    """A statement as shown, and each side with the names' values put in."""

    shown: tuple[str, ...]
    sides: tuple[str, ...]
    signs: tuple[str, ...]
    loc: Loc

    @property
    def text(self) -> str:
        """As a pupil sees it; every gap is ``___``."""
        return self.with_signs(self.shown, *(GAP if sign == SIGN_GAP else sign for sign in self.signs))

    @property
    def gap_side(self) -> int | None:
        """Which side has a gap for a number."""
        return next((index for index, side in enumerate(self.sides) if GAP in side), None)

    @property
    def sign_gap(self) -> int | None:
        """Which sign is missing."""
        return self.signs.index(SIGN_GAP) if SIGN_GAP in self.signs else None

    def with_signs(self, sides: tuple[str, ...], *signs: str) -> str:
        """Sides joined by signs."""
        return sides[0] + "".join(f" {sign} {side}" for sign, side in zip(signs, sides[1:], strict=True))

    @property
    def calculations(self) -> int:
        """How many signs of calculation it has."""
        return sum(len(CALCULATION.findall(side)) for side in self.sides)

    def value(self, side: int, gap: str = "") -> Quantity:
        """What a side is worth, with something in its gap. Raises ``ValueError`` or ``ArithmeticError``."""
        return value_of(self.sides[side].replace(GAP, gap))


def units_in(text: str) -> list[str]:
    """The units of a text, each once, in order."""
    return list(dict.fromkeys(unit or pound for unit, pound in _UNIT.findall(text)))


def read_statement(text: str, values: Mapping[str, str], limit: int, loc: Loc) -> Statement:
    """The statement in a text. ``values`` are what characters are worth, by name; ``limit`` the largest number."""
    plain = " ".join(text.split())
    for typed, sign in _AS_SIGNS:
        plain = plain.replace(typed, sign)
    if len(plain) > _LONGEST:
        raise Unsolvable(loc, "This statement is too long to read.", f"write at most {_LONGEST} letters and signs.")
    parts = _RELATION.split(_GAP.sub(GAP, plain))
    shown, signs = tuple(side.strip() for side in parts[::2]), tuple(parts[1::2])
    if not signs or not all(shown):
        raise Unsolvable(
            loc, f'"{plain}" does not compare two sides.', "write a side, one of = ≠ < > or ?, and another side."
        )
    if _DIGIT_GAP.search(plain):
        raise Unsolvable(loc, "The gap stands for a digit.", "use the kind number-sentence for missing digits.")
    gaps = sum(side.count(GAP) for side in shown) + signs.count(SIGN_GAP)
    if gaps > 1:
        raise Unsolvable(loc, f'"{plain}" has {gaps} gaps.', "leave one gap; for more use the kind number-sentence.")
    sides = tuple(_with_values(side, values, loc) for side in shown)
    statement = Statement(shown, sides, signs, loc)
    _check(statement, limit)
    return statement


def _with_values(side: str, values: Mapping[str, str], loc: Loc) -> str:
    """The side with each name replaced by what the character is worth."""
    if values:
        names = sorted(values, key=len, reverse=True)
        either = "|".join(re.escape(name) for name in names)
        by_lower = {name.lower(): value for name, value in values.items()}
        side = re.sub(
            rf"(?<![\w-])(?:{either})(?![\w-])", lambda m: by_lower[m.group().lower()], side, flags=re.IGNORECASE
        )
    for word in _WORD.findall(side):
        if word not in _KNOWN_WORDS:
            near = did_you_mean(word, values)
            fix = (
                f"use one of {', '.join(values)}, or numbers."
                if values
                else "give the activity a cast and a fact, or use numbers."
            )
            raise Unsolvable(loc, f'"{word}" stands for nobody here.{near}', fix, "activity-fact-missing")
    return side


def _check(statement: Statement, limit: int) -> None:
    """That each side can be worked out, sides can be compared, and no number is past the limit."""
    text = " ".join(statement.sides)
    if any(Fraction(number.replace(",", "").rstrip(".")) > limit for number in _BARE_NUMBER.findall(text)):
        raise Unsolvable(statement.loc, "A number here is too large.", f"write numbers of at most {limit:,}.")
    whole = [index for index in range(len(statement.sides)) if index != statement.gap_side]
    try:
        worth = [statement.value(index) for index in whole]
    except ZeroDivisionError:
        raise Unsolvable(statement.loc, "Nothing can be divided by 0.", "divide by another number.") from None
    except (ValueError, ArithmeticError) as error:
        message = f'"{statement.text}" cannot be worked out ({error}).' if str(error) else "This cannot be worked out."
        raise Unsolvable(
            statement.loc, message, "write sums such as 6 + 3 or 4 × 2, with units that go together."
        ) from None
    if len({value.kind for value in worth}) > 1:
        raise Unsolvable(statement.loc, "The sides are not amounts of the same sort.", "compare like with like.")
    if any(abs(Fraction(value.amount)) > limit * 1000 for value in worth):
        raise Unsolvable(statement.loc, "A side comes to too much.", f"keep to numbers of at most {limit:,}.")
