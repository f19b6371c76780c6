"""Measures: compared, ordered, converted, read off a scale, levelled with weights, put together, kept in step."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import ClassVar

from ...model.activity import Context, Solution
from ...model.year import YearLimits
from ..kind import Kind
from .answers import MeasureAnswer
from .solve import solve
from .tasks import (
    ChooseUnit,
    CompareAmounts,
    ConvertAmounts,
    CountUnits,
    FindPerimeter,
    FindTotal,
    FindVolume,
    KeepInStep,
    LevelLoad,
    MeasureTask,
    OrderAmounts,
    ReachLoads,
    ReadScale,
    ShareInRatio,
)
from .versions import versions_of


class MeasureKind(Kind[MeasureTask, MeasureAnswer]):
    """Exact amounts.

    Steps: one for each unit changed or chosen, comparison, sum, multiplication or division; one for each weight; two to read a
    scale (what a part is worth, where the arrow is) and one more between marks.
    """

    name = "measure"
    says = "Measures: compared, ordered, converted, read off a scale, levelled with weights, added, kept in step, their unit chosen."
    answer_shape = (
        "compare {more: id, first, second or same, difference, unit}; order {order, together}; convert {amount, number, "
        "unit, thing?}; read {arrow, reading | between and nearer, unit}; units {unit, count, left}; level {against, "
        "beside, character?}; reach {load, against, beside}; total {total, unit}; rate {amount, unit}; parts {parts, unit}; "
        "volume {volume, unit}; unit {thing, number, unit}; perimeter {perimeter, unit}; numbers whole, or over/under"
    )
    example = """
kind: measure
title: Level the scales on the quay
find: level
fact: mass
unit: kg
weights: [1 kg, 2 kg, 5 kg, 5 kg, 10 kg]
cast:
  seal: {mass: 12}
  puffin: {mass: 7}
"""
    more_examples = (
        """\
kind: measure
title: Round the harbour wall
find: perimeter
squares: [x.., xxx, x..]
side: 2 m
year: 4
answers: 1
""",
        """\
kind: measure
title: Which unit is missing?
find: unit
things: {length of a feather: 15 cm, height of a mast: 9 m, mass of a plum: 50 g}
units: [cm, m, g, kg]
year: 2
answers: 3
""",
    )
    practises: ClassVar[Mapping[str, str]] = {
        "1NPV-2": "reads numbers off a scale and compares them",
        "1AS-1": "splits a mass into two weights",
        "2NPV-2": "places numbers between the numbered marks of a scale",
        "2AS-1": "adds weights across ten",
        "2AS-2": "finds how much longer, heavier or fuller one is than another",
        "2AS-4": "adds and takes away amounts within a hundred",
        "2MD-1": "lays units end to end and writes it as a multiplication",
        "2MD-2": "asks how many of a unit make an amount",
    }
    tasks = (
        CompareAmounts,
        OrderAmounts,
        ConvertAmounts,
        ReadScale,
        CountUnits,
        LevelLoad,
        ReachLoads,
        FindTotal,
        KeepInStep,
        ShareInRatio,
        FindVolume,
        ChooseUnit,
        FindPerimeter,
    )
    told_by = "find"

    def solve(self, fields: MeasureTask, context: Context) -> Solution[MeasureAnswer]:
        """As ``find`` asks."""
        return solve(fields, context)

    def steps_of(self, fields: MeasureTask, context: Context) -> int:
        """Weights are laid in every way there is."""
        return 150

    def versions(
        self, fields: MeasureTask, context: Context, year: YearLimits
    ) -> Iterator[tuple[MeasureTask, Context, str]]:
        """The same amounts, or amounts and units of that year in the same order."""
        return versions_of(fields, context, year)


KIND = MeasureKind()
