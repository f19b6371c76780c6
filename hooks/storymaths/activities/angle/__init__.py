"""Angles: what sort they are, parts of a turn, and the one that is missing."""

from __future__ import annotations

from collections.abc import Iterator
from typing import ClassVar

from ...model.activity import Context, Solution
from ...model.year import YearLimits
from ..kind import Kind
from .solve import solve
from .tasks import AngleAnswer, AngleTask, FindAround, FindInShape, MeasureTurns, NameAngles
from .versions import versions_of


class Angle(Kind[AngleTask, AngleAnswer]):
    """Steps: one for each calculation, at least one."""

    name = "angle"
    says = "Angles as turns and in degrees: what sort each is, how large a part of a turn is, and the one missing."
    answer_shape = "{angle: A, degrees: 35, name: acute}; {turn: 1/2, degrees: 180}; {degrees: 55} for the one missing"
    practises: ClassVar[dict[str, str]] = {}
    tasks = (NameAngles, MeasureTurns, FindAround, FindInShape)
    told_by = "find"
    example = """\
kind: angle
title: How far the lamp on the quay turns
find: turns
turns: [1/4, 1/2, 3/4, 1]
year: 3
answers: 4
years: {5: {}}
"""
    more_examples = (
        """\
kind: angle
title: The plank and the path
find: around
place: straight line
known: [35, 90]
year: 5
answers: 1
""",
        """\
kind: angle
title: Three gates left open
find: name
angles: [40, 90, 125]
year: 4
answers: 3
""",
    )

    def solve(self, fields: AngleTask, context: Context) -> Solution[AngleAnswer]:
        """An answer for each angle or turn, in the order given; or the one that is missing."""
        return solve(fields, context)

    def versions(
        self, fields: AngleTask, context: Context, year: YearLimits
    ) -> Iterator[tuple[AngleTask, Context, str]]:
        """The same ones, or ones in steps of five or ten degrees."""
        return versions_of(fields, context, year)


KIND = Angle()
