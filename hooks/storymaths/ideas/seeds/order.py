"""The cast in order by a fact, or by clues about it."""

from __future__ import annotations

from ...activities.saying import capital
from ...expression.noun import plural
from ...model.plain import Plain
from ...model.year import YearLimits
from ..candidate import Candidate, Candidates, activity
from ..material import Material
from ..number_sets import number_sets
from .seed import Seed

_IN_CLUES = 4


def _plant(material: Material, limits: YearLimits) -> Candidates:
    for numbers in number_sets(material, limits):
        first = numbers.words.least_first
        them = f"the {plural(numbers.fact.bearer)}" if numbers.fact.bearer else "them"
        yield numbers.with_cast("order", capital(first), f"Put {them} in order, {first}.")
        rising = list({numbers.values[one.id]: one for one in numbers.rising}.values())
        if len(rising) >= _IN_CLUES and numbers.times == 1:
            least, second, third, most = (one.id for one in (rising[0], rising[1], rising[-2], rising[-1]))
            clues: list[Plain] = [f"{least} < {second}", f"{second} < {most}", f"{third} > {least}"]
            cast: list[Plain] = [one.id for one in numbers.who if one.id in (least, second, third, most)]
            ask = (
                f"You do not know the numbers, only the clues. In what order could they be, {first}? Find every order."
            )
            lines = activity("order", f"What the clues tell: {numbers.words.things}", ask, cast=cast, clues=clues)
            yield Candidate(lines, numbers.uses, (), numbers.marks, finds=True)


SEED = Seed("three characters or more with a number each", _plant)
