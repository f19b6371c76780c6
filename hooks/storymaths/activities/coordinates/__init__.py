"""Coordinates: points read and drawn, moved and reflected, and the corner of a shape that is missing."""

from __future__ import annotations

from typing import ClassVar

from ...model.activity import Context, Solution
from ..kind import Kind
from .solve import solve
from .tasks import (
    CoordinatesAnswer,
    CoordinatesTask,
    FindCorner,
    FindTranslation,
    PlotPoints,
    ReadPoints,
    ReflectPoints,
    TranslatePoints,
)


class Coordinates(Kind[CoordinatesTask, CoordinatesAnswer]):
    """Steps: one to read or to mark a point, two where it moves."""

    name = "coordinates"
    says = "Points on squared paper with two axes: read, mark, move and reflect them, or find the missing corner."
    answer_shape = "{point: A, at: [2, 3]}; {right: 3, up: −2} for a translation that is asked for"
    practises: ClassVar[dict[str, str]] = {}
    tasks = (ReadPoints, PlotPoints, TranslatePoints, FindTranslation, ReflectPoints, FindCorner)
    told_by = "find"
    example = """\
kind: coordinates
title: The map of the quay
find: read
points: {A: [2, 3], B: [5, 1], C: [0, 4]}
year: 4
answers: 3
"""
    more_examples = (
        """\
kind: coordinates
title: The float drifts
find: translate
points: {A: [1, 2], B: [4, 2], C: [4, 5]}
joined: true
by: [3, -1]
year: 4
answers: 3
""",
    )

    def solve(self, fields: CoordinatesTask, context: Context) -> Solution[CoordinatesAnswer]:
        """An answer for each point in the order given, or the one move or corner."""
        return solve(fields, context)


KIND = Coordinates()
