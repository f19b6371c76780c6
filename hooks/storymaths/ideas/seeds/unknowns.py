"""Two characters whose numbers are not told, found from what they come to together."""

from __future__ import annotations

import re

from ...model.plain import Plain
from ...model.year import YearLimits
from ..candidate import Candidates
from ..material import Material
from ..number_sets import number_sets
from ..wording import WEIGHS
from .seed import Seed

_WORD = re.compile(r"[a-z]{1,16}")


def _plant(material: Material, limits: YearLimits) -> Candidates:
    if not limits.knows("+"):
        return
    for numbers in number_sets(material, limits):
        named = [one for one in reversed(numbers.rising) if _WORD.fullmatch(one.id)]
        pairs = [(one, other) for one in named for other in named if numbers.values[one.id] > numbers.values[other.id]]
        for one, other in pairs[:2]:
            a, b = numbers.values[one.id], numbers.values[other.id]
            things = numbers.fact.things
            lines: list[Plain] = [f"{other.id} + {other.id} = {2 * b}", f"{one.id} + {other.id} = {a + b}"]
            words = numbers.words
            twice, both = words.amount(2 * b), words.amount(a + b)
            ask = (
                f"Two of {other.name} would be as heavy as {twice}. {one.name} and {other.name} are as heavy as {both}. "
                f"How many {things} is each?"
                if numbers.fact.of == WEIGHS
                else f"Twice what {other.name} has is {twice}. {one.name} and {other.name} have {both} together. "
                "How many has each?"
            )
            yield numbers.with_numbers(
                "unknowns", f"{one.name} and {other.name}: how many {things}?", ask,
                lines=lines, unknowns=[other.id, one.id], gaps=f"0-{a + b}",
            )  # fmt: skip


SEED = Seed("two characters with a number each, and a year that writes sums", _plant)
