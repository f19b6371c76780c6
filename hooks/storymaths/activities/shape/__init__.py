"""Shapes: properties counted, sorted and found by clues, what cannot be, symmetry, and shapes made of shapes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any, ClassVar

from ...model.activity import Context, Solution
from ...model.year import YearLimits
from ..kind import Kind
from .solve import solve
from .tasks import TASKS, ShapeAnswer, ShapeTask
from .versions import versions_of


class Shape(Kind[ShapeTask, ShapeAnswer]):
    """Shapes and their properties.

    Steps: one for each name, each property of a shape, each rule, each clue or each count of a claim; for a half to be
    completed, one for each shaded square; for a shape to be made, one for each piece laid.
    """

    name = "shape"
    says = (
        "Flat and solid shapes: their names, what they have, how they sort, which it can be, what cannot be, symmetry, and "
        "shapes made of shapes."
    )
    answer_shape = (
        "{shape: cube, faces: 6, …}; {letter: A, shape: triangle} for a name; as for sort {regions: …, empty: …}; for clues "
        "{shape: kite}; for a claim {claim: 1, can: false, shapes: []}; for a half {rows: [x..x, …], squares: 8}; for a shape "
        "made {pieces: [{piece: triangle, on: [lower left of A1]}, …]}, A1 being the bottom left square"
    )
    practises: ClassVar[dict[str, str]] = {
        "1G-1": "shapes known by name, lying any way",
        "1G-2": "smaller flat shapes turned, flipped and laid together to make a shape that is shown",
        "2G-1": "sides, corners, faces, edges and vertices counted and put side by side",
    }
    tasks = TASKS
    example = """\
kind: shape
title: What is in the parcels?
cast:
  gull: {parcel: cube}
  crab: {parcel: triangular prism}
  seal: {parcel: square-based pyramid}
fact: parcel
count: [faces, edges, vertices]
answers: 3
years: {3: {}}
"""
    more_examples = (
        """\
kind: shape
title: The harbour hut
make: [◢◣, xx]
pieces: {wide triangle: 1, triangle: 2, square: 2, rectangle: 1}
use: some
answers: 7
years: {1: {}, 3: {}}
""",
        """\
kind: shape
title: Whichever way up
shapes: [triangle, square, scalene triangle, rectangle]
name: plain
turned: true
year: 1
answers: 4
""",
    )

    def schema_for(self, raw: Mapping[str, Any]) -> type[ShapeTask]:
        """By the field that asks, which a task is named after: a filled one before one left empty."""
        return max(TASKS, key=lambda schema: (bool(raw.get(schema.task_name)), schema.task_name in raw))

    def solve(self, fields: ShapeTask, context: Context) -> Solution[ShapeAnswer]:
        """Every shape counted or sorted, every shape that fits, every claim judged, in the order given."""
        return solve(fields, context)

    def versions(
        self, fields: ShapeTask, context: Context, year: YearLimits
    ) -> Iterator[tuple[ShapeTask, Context, str]]:
        """The same shapes, with what the year counts; of one to be made, more or less is drawn in."""
        return versions_of(fields, context, year)


KIND = Shape()
