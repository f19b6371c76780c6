"""Number sentences with something missing: a number, a digit or a sign, on either side; and fact families."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any, ClassVar

from ...model.activity import Context, Solution
from ...model.year import YearLimits
from ..kind import ActivityFields, Kind
from ..own_words import without_stale_words
from .solve import solve
from .tasks import ChoiceTask, FamilyTask, NumberSentenceAnswer, NumberSentenceTask, SentencesTask
from .versions import steps_of, versions_of


class NumberSentence(Kind[NumberSentenceTask, NumberSentenceAnswer]):
    """Steps: the operations of the hardest sentence, one for each gap after its first, one more if a gap is undone.

    For a family: two, and one for each family. For a choice: one for each operation of what is to be made or checked.
    """

    name = "number-sentence"
    says = "Find the missing numbers, digits or signs of number sentences, write out a fact family, or choose the calculation."
    answer_shape = (
        "{line: 1, gaps: [5, +], sentence: 7 + 5 = 12}: which sentence, what stands in its gaps from left to right, "
        "and the sentence filled in (with gaps: cast also who: [gull, crab]); {line: 1, true: false} for one without "
        "gaps; {family: [3, 4, 7], sentences: [...]} for a family; {choice: 12 − 4, comes_to: 8} for a calculation chosen"
    )
    example = """\
kind: number-sentence
title: Two for the weighing plank
ask: The plank is level when both ends are worth the same. Who can stand in the gaps?
fact: mass
cast:
  gull: {mass: 4}
  crab: {mass: 5}
  puffin: {mass: 8}
  seal: {mass: 9}
  limpet: {mass: 3}
sentences:
  - 7 + ___ + ___ = 20
gaps: cast
swapped: same
answers: 2
"""
    more_examples = (
        """\
kind: number-sentence
title: Which calculation?
story: Gull has 12 herrings and gives 4 away. How many are left?
makes: 12 − 4
choices: [12 − 4, 12 + 4, 4 − 12]
year: 2
answers: 1
""",
    )
    practises: ClassVar[Mapping[str, str]] = {
        "1AS-2": "reads and completes sentences with + − =, with = in any place",
        "1NF-1": "uses facts within ten to find a missing number",
        "2NF-1": "uses facts within ten to find a missing number",
        "2AS-1": "missing numbers where the sum crosses ten",
        "2AS-2": "how many more, as a missing number added",
        "2AS-3": "adds and takes away ones or tens",
        "2AS-4": "adds and takes away two-digit numbers",
        "2MD-2": "a missing factor, for how many groups",
    }
    tasks = (SentencesTask, FamilyTask, ChoiceTask)

    def schema_for(self, raw: Mapping[str, Any]) -> type[ActivityFields]:
        """A choice or a family where one is given, else sentences."""
        if "choices" in raw:
            return ChoiceTask
        return FamilyTask if "family" in raw else SentencesTask

    def solve(self, fields: NumberSentenceTask, context: Context) -> Solution[NumberSentenceAnswer]:
        """Every filling, sentence by sentence, in each the first gap's number rising; or every right choice in its order."""
        return solve(fields, context)

    def steps_of(self, fields: NumberSentenceTask, context: Context) -> int:
        """Whatever may stand in the gaps is looked at."""
        return steps_of(fields, context)

    def versions(
        self, fields: NumberSentenceTask, context: Context, year: YearLimits
    ) -> Iterator[tuple[NumberSentenceTask, Context, str]]:
        """Other numbers and the same ones: the same first for a younger year, last for an older one."""
        yield from without_stale_words(fields, context, versions_of(fields, context, year))


KIND = NumberSentence()
