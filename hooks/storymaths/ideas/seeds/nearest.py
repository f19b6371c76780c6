"""Which two of the cast come nearest to a number of the story."""

from __future__ import annotations

from itertools import combinations

from ...activities.saying import counted
from ...model.plain import Plain
from ...model.year import YearLimits
from ..candidate import Candidate, Candidates, activity, from_counted
from ..material import Material
from ..number_sets import number_sets
from .seed import Seed

_CHOICES, _TARGETS, _NEAR = 3, 2, 3


def _plant(material: Material, limits: YearLimits) -> Candidates:
    if not limits.knows("+"):
        return
    for numbers in number_sets(material, limits):
        values = sorted(set(numbers.values.values()), reverse=True)
        sums = {one + other: (one, other) for one, other in combinations(values, 2)}
        targets = [
            one
            for one in material.counted
            if one.number >= values[0]
            and one.number not in sums
            and (one.things == numbers.fact.things or numbers.fact.of == "count")
        ]
        for target in targets[:_TARGETS] if numbers.times == 1 else ():
            near = sorted(sums, key=lambda total: (abs(total - target.number), total))[:_CHOICES]
            away = [abs(total - target.number) for total in near]
            if len(near) == _CHOICES and away[0] < away[1] and away[0] <= _NEAR:
                choices: list[Plain] = [f"{sums[total][0]} + {sums[total][1]}" for total in sorted(near)]
                told = counted(target.number, target.things)
                ask = f"There are {told}. Which two come nearest to that many {numbers.fact.things} together?"
                lines = activity("nearest", f"Nearest to {told}", ask, to=target.number, choices=choices)
                uses = (*numbers.uses, from_counted(target.number, target.things, target.pages))
                yield Candidate(lines, uses, (), numbers.marks)


SEED = Seed("a number that no two characters make exactly, and three characters with a number each", _plant)
