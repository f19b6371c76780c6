"""Unknowns with names: problems of several steps, two unknowns, and one that stands in a line twice."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, ClassVar

from ...model.activity import Context, Solution
from ..kind import ActivityFields, Kind
from .solve import solve
from .tasks import Found, LettersTask, ThingsTask, UnknownsTask


class Unknowns(Kind[UnknownsTask, Found]):
    """Steps: one for each operation of each line."""

    name = "unknowns"
    says = "Unknown numbers that have names: problems of several steps, two unknowns, one unknown that stands twice."
    answer_shape = "{t: 32, c: 18}: what each unknown is"
    practises: ClassVar[Mapping[str, str]] = {
        "1AS-2": "two facts that share a number",
        "2AS-2": "a problem of two steps, each written down",
    }
    tasks = (ThingsTask, LettersTask)
    example = """\
kind: unknowns
title: Lanterns in two boats
ask: Each small boat has as many lanterns as every other. Three small boats have 15 lanterns. A small boat and a large one
  have 14. How many are in the large one?
lines: [small + small + small = 15, small + large = 14]
unknowns: [small, large]
wanted: [large]
gaps: 0-20
year: 2
answers: 1
"""
    more_examples = (
        """\
kind: unknowns
title: Tickets for the ferry
lines: ["3t = 96", "2t + 2c = 100"]
unknowns: [t, c]
year: 6
answers: 1
""",
    )

    def schema_for(self, raw: Mapping[str, Any]) -> type[ActivityFields]:
        """Letters where all the unknowns are single ones."""
        names = raw.get("unknowns")
        letters = isinstance(names, list) and all(isinstance(name, str) and len(name) == 1 for name in names)
        return LettersTask if letters else ThingsTask

    def solve(self, fields: UnknownsTask, context: Context) -> Solution[Found]:
        """Every way that makes all lines true, the first unknown rising, then the second."""
        return solve(fields, context)


KIND = Unknowns()
