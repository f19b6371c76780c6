"""An activity's question, or a bend's words, beside its data: a number of each that the other lacks, where all others agree.

It reads numbers in figures and in words. It leaves counts of what is listed, ones, pages, tens and hundreds of a number,
pence and pounds, a number that is many times the other, and bounds that no question tells. Common practice, no source: a
question says what its data are.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from fractions import Fraction

from ..expression.number import Rational, exact
from .amounts import InFigures
from .form import Form

_NUMBER = Form(r"(?<![\w.])£?\d+(?:,\d{3})*(?:\.\d+)?")
_NOT_DATA = Form(r"\bpages? \d+(?:(?: and | to |–|-)\d+)?|\byear \d|\bone\b")
_NOT_ASKED = frozenset(
    ("smallest", "largest", "up_to", "years", "at_most", "kind", "cast", "fact", "id", "title", "ask", "because", "answers",
     "teams", "unit", "note", "grid")
)  # fmt: skip
"""Fields that no question need tell."""
_AS_MANY = (10, 60, 100, 1000)
"""What one is of another as a ten, an hour, a pound, a kilogram."""
_LIST, _NEAR = 3, 2
_FAR = 2
"""How many times as large the one may be: more is another thing that is told."""


def exchanged(ask: str, data: Mapping[str, object], counts: Collection[int]) -> tuple[Rational, Rational] | None:
    """A number of a question and the one of its data in whose place it stands; None where they agree, or in more than one."""
    text = InFigures.of(_NOT_DATA.sub("", " ".join(ask.lower().split()))).text
    asked = set(_read(text))
    have = {value for key, field in data.items() if key not in _NOT_ASKED for value in _numbers(field)}
    if not asked or not have:
        return None
    alone = {value for value in asked - have - {1} if value not in counts and not _scaled(value) & have}
    lacking = {value for value in have - asked if not any(value in _scaled(other) for other in asked)}
    if len(alone) != 1 or len(lacking) != 1:
        return None
    (said,), (given,) = alone, lacking
    return (said, given) if said and given and max(said, given) < _FAR * min(said, given) else None


def nearly_told(words: str, data: Mapping[str, object]) -> tuple[Rational, Rational] | None:
    """A number told in the place of one of a field of data, three at least, that the words tell but for it; None where there is none."""
    told = set(_read(InFigures.of(" ".join(words.lower().split())).text))
    for key, field in data.items() if len(told) >= _LIST else ():
        have: set[Rational] = set() if key in _NOT_ASKED else set(_numbers(field))
        lacking = have - told
        near = [value for value in told - have for one in lacking if -_NEAR <= value - one <= _NEAR]
        if len(have) >= _LIST and len(lacking) == len(near) == 1:
            return near[0], lacking.pop()
    return None


def _scaled(value: Rational) -> set[Rational]:
    return {value * times for times in _AS_MANY}


def _numbers(value: object) -> Iterator[Rational]:
    match value:
        case bool():
            return
        case int():
            yield value
        case float() | Fraction():
            yield Fraction(str(value))
        case str():
            yield from _read(value)
        case Mapping():
            yield from (number for each in value.values() for number in _numbers(each))
        case list() | tuple():
            yield from (number for each in value for number in _numbers(each))


def _read(text: str) -> Iterator[Rational]:
    return (exact(match.group().lstrip("£").replace(",", "")) for match in _NUMBER.finditer(text))
