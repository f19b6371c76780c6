"""A statement about any two numbers like the cast's: is it always so, sometimes, or never?"""

from __future__ import annotations

from dataclasses import dataclass

from ...model.plain import Plain
from ...model.year import YearLimits
from ..candidate import Candidate, Candidates, activity
from ..material import Material
from ..number_sets import number_sets
from .seed import Seed


@dataclass(frozen=True, slots=True)
class _Statement:
    title: str
    then: str
    statement: str
    """With ``{things}`` for what is counted."""
    because: str
    say: str = ""


_STATEMENTS = (
    _Statement(
        "The same twice", "even(a + a)",
        "When two have the same number of {things}, they have an even number together.",
        "Each of the one goes with one of the other, so all of them stand in pairs.",
    ),
    _Statement(
        "Two odd ones", "even(a + b)",
        "When two have an odd number of {things} each, they have an even number together.",
        "Each odd number is pairs and one more. The two that are left over make a pair.", "odd(a) and odd(b)",
    ),
    _Statement(
        "Odd with even", "even(a + b)",
        "When one has an odd number of {things} and one an even number, they have an even number together.",
        "The odd number leaves one over, and the even number has none to pair it with.", "odd(a) and even(b)",
    ),
)  # fmt: skip


def _plant(material: Material, limits: YearLimits) -> Candidates:
    for numbers in number_sets(material, limits) if limits.knows("+") else ():
        top = max(numbers.values.values())
        over = next((up_to for up_to in sorted(limits.practice.always_sometimes_never.up_to) if up_to >= top), None)
        for one in _STATEMENTS if over and numbers.times == 1 else ():
            rest: dict[str, Plain] = {"say": one.say} if one.say else {}
            rest |= {"then": one.then, "over": f"1 to {over}"}
            rest |= {"statement": one.statement.format(things=numbers.fact.things), "because": one.because}
            yield Candidate(activity("always-sometimes-never", one.title, "", **rest), numbers.uses, invented=True)


SEED = Seed("three characters or more with a number each", _plant)
