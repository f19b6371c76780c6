"""Units: how many of one make another, of length, mass, capacity, time and money."""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction
from functools import lru_cache

from ..expression.number import Rational
from ..model.known_facts import KnownFacts, KnownUnits
from .amounts import END_OR_AND, FRACTION_IN_WORDS, fraction, number, says
from .claim_class import IS, ClaimClass, Untrue
from .form import Form

_FIGURES = r"(?:\d{1,3}(?:,\d{3})+|\d+)(?:\.\d+)?"
_COUNT = (
    rf"(?<![\w£−/.,:+-])(?:{_FIGURES}|a (?:hundred|thousand)(?= )|an?(?= )|each(?= )|every(?= )|{FRACTION_IN_WORDS} of"
    rf" (?:an? |one )|half an? )"
)
_GOES_ON = re.compile(r",? (?:and|with) (?:(?:an?|half|another) |\d)")
_ADDED = Form(r"(?:\d|\b(?:half|an?) )[^.;:]*\b(?:and|plus) $")
"""What makes an amount one of two that are added."""
_IS = (
    r"(?:is|has|are|have|makes?|equals?|lasts?|contains?|is the same as|are the same as|is equal to|is worth|are"
    r" worth|takes|there are in)"
)


@lru_cache(maxsize=2)
def _forms(names: tuple[str, ...]) -> tuple[re.Pattern[str], ...]:
    unit = "|".join(sorted((re.escape(name) for name in names), key=len, reverse=True))
    one, many = (rf"(?P<c{i}>{_COUNT}) ?(?P<u{i}>{unit})(?!\w)" for i in (1, 2))
    return (
        re.compile(rf"{one} {_IS} (?:about |exactly |always )?{many}{END_OR_AND}"),
        re.compile(rf"\b(?:there are|it has|we have) (?:exactly )?{many} in {one}{END_OR_AND}"),
        re.compile(rf"(?:^|[\"“] ?){many} in {one}{END_OR_AND}"),
    )


def _find(sentence: str, facts: KnownFacts) -> Iterator[Untrue]:
    units = facts.units
    for form in _forms(tuple(units.by_name)):
        for match in form.finditer(sentence):
            one, of = units.by_name[match["u1"]], units.by_name[match["u2"]]
            rates, turned = units.counts.get((one, of)), units.counts.get((of, one))
            many, said = _count(match["c1"]), _count(match["c2"])
            right = {many * rate for rate in rates or ()} | {Fraction(many) / rate for rate in turned or ()}
            if _GOES_ON.match(sentence, match.end()) or _ADDED.search(sentence, 0, match.start()):
                continue
            if right and said not in right and not _is_part_of_month(units, one, of, many):
                named = _named(units, of, match["u2"], min(right))
                yield Untrue(*match.span(), f"{_shown(match['c1'])} {match['u1']} is {says(min(right))} {named}")


def _is_part_of_month(units: KnownUnits, one: str, of: str, many: Rational) -> bool:
    """Whether several counts may be said of one, so that nothing is sure of more than one."""
    return many != 1 and len(units.counts.get((one, of)) or units.counts[of, one]) > 1


def _named(units: KnownUnits, unit: str, written: str, count: Rational) -> str:
    """The unit as it was written, for one or for several."""
    one, many = units.names[unit][:2]
    return written if written not in (one, many) else one if count == 1 else many


def _count(text: str) -> Rational:
    text = text.strip()
    if text in ("a", "an", "each", "every"):
        return 1
    if text.startswith(("a hundred", "a thousand")):
        return 100 if "hundred" in text else 1000
    part = re.match(FRACTION_IN_WORDS, text)
    return fraction(part.group().strip()) if part else number(text)


def _shown(count: str) -> str:
    return "one" if count.strip() in ("each", "every") else count.strip()


CLASS = ClaimClass(
    name="units",
    reads="So many of one unit said to be so many of another: an hour is 60 minutes, 2 m is 200 cm, there are 7 days in a week, half "
    "an hour is 30 minutes.",
    leaves="Amounts of mixed units and signs of arithmetic, which the reader of arithmetic works out; units that are not listed.",
    source="site_data/facts.yaml, units.",
    cues=frozenset(
        "second seconds minute minutes day days week weeks month months year years decade century hours mm cm millimetres centimetres "
        "metre metres gram grams kg km ml millilitres kilogram kilograms litre litres kilometre kilometres pence pennies".split()
    ),
    find=_find,
    numbers=1,
    verbs=IS | {"in", "contains"},
)
