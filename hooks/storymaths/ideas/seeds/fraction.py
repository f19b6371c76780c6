"""Halves, quarters and other parts of what the story counts."""

from __future__ import annotations

from fractions import Fraction

from ...activities.saying import counted, spoken
from ...model.plain import Plain
from ...model.year import YearLimits
from ..candidate import Candidate, Candidates, activity, from_counted
from ..idea import FromStory
from ..material import Material
from ..number_sets import number_sets
from .seed import Seed

_MOST_WHOLES, _MOST_PARTS = 3, 4


def _plant(material: Material, limits: YearLimits) -> Candidates:
    met = sorted(limits.practice.fraction.denominators[:_MOST_PARTS])
    parts = [*(part for part in material.parts if part in met), *(part for part in met if part not in material.parts)]
    for numbers in number_sets(material, limits):
        for part in parts if not numbers.fact.of_body else ():
            word, things = spoken(Fraction(1, part)), numbers.words.things
            ask = f"Whose {things} can be shared into {part} equal parts, with none left over?"
            title = f"{word.capitalize()} of the {things}"
            yield numbers.with_cast("fraction", title, ask, lists=True, find="share", fraction=f"1/{part}")
    wholes = {one.number: one for one in reversed(material.counted)}
    for whole in sorted(wholes.values(), key=material.counted.index):
        for part in parts:
            if not whole.number % part and whole.number > part:
                told = counted(whole.number, whole.things)
                word = spoken(Fraction(1, part))
                one = word if part == 2 else f"a {word}" if word.isalpha() else word
                lines = activity(
                    "fraction", f"{word.capitalize()} of {told}", f"What is {one} of the {told}?",
                    find="part", fraction=f"1/{part}", of=whole.number, things=str(whole.things),
                )  # fmt: skip
                yield Candidate(lines, (from_counted(whole.number, whole.things, whole.pages),))
    for fact in material.yes_no:
        rest: dict[str, Plain] = {"find": "set", "fact": fact.id, "cast": "all"}
        yield Candidate(activity("fraction", "What fraction of them?", "", **rest), (FromStory(fact.means),))


SEED = Seed("a number that can be cut into equal parts the year has names for", _plant)
