"""Sorting: who goes where by one rule, two or three, one card to a box, or the rule behind a sorting."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any, ClassVar

from ...model.activity import Context, Solution
from ...model.year import YearLimits
from ..kind import Kind
from .solve import solve
from .tasks import BoxesTask, GuessTask, PlaceTask, SortAnswer, SortTask, ThreeRingsTask, schema_for
from .versions import versions_of


class Sort(Kind[SortTask, SortAnswer]):
    """Sorting by facts.

    Steps: one for each rule, and one more where rules are put together; for a box, one each; for a rule
    to be guessed two, what those inside share and whether nobody outside has it.
    """

    name = "sort"
    says = "Sorting a cast, or numbers, by one rule, two or three in rings or boxes; or guessing the rule of a sorting."
    answer_shape = (
        "{regions: {both: [ids], first: [ids], second: [ids], neither: [ids]}, empty: [region]} with in and out for one "
        "rule, and for three all, first and second, first and third, second and third, first, second, third, none; for "
        "boxes {boxes: [one id a box]}; for a rule to be guessed {rule: legs > 4}"
    )
    practises: ClassVar[dict[str, str]] = {
        "1G-1": "shapes and things told apart by what they have, whatever way up",
        "1AS-1": "odd and even as rules to sort by",
        "1NPV-2": "numbers compared with more than and fewer than",
        "2G-1": "properties put side by side: what fits one rule, both or neither",
    }
    tasks = (PlaceTask, ThreeRingsTask, BoxesTask, GuessTask)
    example = """\
kind: sort
title: Who goes in which ring?
cast:
  gull: {legs: 2, swims: true, flies: true}
  crab: {legs: 10, swims: false, flies: false}
  puffin: {legs: 2, swims: true, flies: true}
  seal: {legs: 0, swims: true, flies: false}
  moth: {legs: 6, swims: false, flies: true}
  whelk: {legs: 0, swims: false, flies: false}
by:
  - {rule: flies, says: can fly, otherwise: cannot fly}
  - {rule: legs > 4, says: more than 4 legs, otherwise: 4 legs or fewer}
diagram: venn
answers: 1
years: {1: {}, 3: {}}
"""

    more_examples = (
        """\
kind: sort
title: Three rings
numbers: [2, 5, 7, 10, 12, 15, 24, 25, 30]
by: [even(n), "multiple(n, 5)", n > 20]
year: 3
answers: 1
""",
    )

    def schema_for(self, raw: Mapping[str, Any]) -> type[SortTask]:
        """By who is inside, the diagram, and how many rules there are."""
        return schema_for(raw)

    def solve(self, fields: SortTask, context: Context) -> Solution[SortAnswer]:
        """The one sorting; every filling of the boxes; or every rule that fits, in the order stated there."""
        return solve(fields, context)

    def versions(self, fields: SortTask, context: Context, year: YearLimits) -> Iterator[tuple[SortTask, Context, str]]:
        """The same cards in a diagram that suits the year."""
        yield from versions_of(fields, context, year)


KIND = Sort()
