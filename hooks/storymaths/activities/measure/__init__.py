"""Measures: compared, ordered, converted, read off a scale, levelled with weights, put together, kept in step."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from typing import Annotated, ClassVar, Literal

from pydantic import Field

from ...model.activity import Context, Solution
from ...model.fields import Text
from ...model.year import YearLimits
from ..finding import Finding, found
from ..kind import ActivityFields, Exact, Kind
from .amount import Measure
from .compare import compare, convert, order
from .ratio import parts, rate
from .scale import read_scale
from .total import total
from .units import units, volume
from .versions import versions_of
from .weights import level, reach

Find = Literal[
    "compare", "order", "convert", "read", "units", "level", "reach", "total", "rate", "parts", "volume"
]  # fmt: skip
Amounts = Annotated[tuple[Measure, ...], Field(max_length=12)]
Named = Annotated[Mapping[Text, Measure], Field(max_length=12)]


class MeasureFields(ActivityFields):
    """What a measure activity may say; ``find`` tells which of the rest it needs. A bare number has no unit."""

    find: Find = "compare"
    """``compare`` two; put in ``order``; ``convert``; ``read`` a scale; how many ``units`` make it; ``level`` a load;
    which loads weights ``reach``; the ``total``; ``rate``, kept in step; ``parts`` in a ratio; ``volume``."""
    amounts: Amounts = ()
    things: Named | None = None
    """Amounts by name: ``{stick: 60 cm}``."""
    unit: Text | None = None
    """The unit of the cast's fact, or of a scale."""
    to: Text | None = None
    """The unit to tell it in."""
    greatest_first: bool = False
    start: Measure | None = None
    less: Amounts = ()
    """What is taken away."""
    amount: Measure | None = None
    """What is measured with units."""
    by: Named | None = None
    """Units and their size: ``{shell: 4 cm}``."""
    load: Measure | None = None
    weights: Annotated[tuple[Measure, ...], Field(max_length=40)] = ()
    """The weights there are, one entry each."""
    pans: Literal["one", "both"] = "one"
    """Whether weights may stand beside the load too."""
    up_to: Annotated[int, Field(ge=1, le=10_000, strict=True)] | None = None
    of: Measure | None = None
    """The amount that is known to come to something."""
    comes_to: Measure | None = None
    want: Measure | None = None
    """How much of it is wanted."""
    total: Measure | None = None
    ratio: Annotated[tuple[Annotated[int, Field(ge=1, le=100, strict=True)], ...], Field(max_length=6)] = ()
    sides: Annotated[tuple[Measure, ...], Field(max_length=3)] = ()
    ends: tuple[Exact, Exact] = (Fraction(0), Fraction(100))
    """The numbers at the ends of a scale."""
    parts: Annotated[int, Field(ge=1, le=200, strict=True)] | None = None
    """How many small parts the scale has."""
    numbered: Annotated[int, Field(ge=1, le=200, strict=True)] | None = None
    """A number stands at every so many marks; every mark if left out."""
    pointers: Annotated[tuple[Exact, ...], Field(max_length=6)] = ()
    """What the arrows show."""
    form: Literal["ruler", "jug", "thermometer"] = "ruler"


_WHAT = "amounts^things^fact"
FINDINGS = {
    "compare": Finding(compare, (_WHAT,), ("unit",)),
    "order": Finding(order, (_WHAT,), ("unit", "greatest_first")),
    "convert": Finding(convert, (_WHAT, "to"), ("unit",)),
    "read": Finding(read_scale, ("parts", "pointers"), ("ends", "numbered", "form", "unit")),
    "units": Finding(units, ("amount", "by")),
    "level": Finding(level, ("load^fact", "weights"), ("pans", "unit")),
    "reach": Finding(reach, ("weights",), ("pans", "up_to")),
    "total": Finding(total, ("start|amounts|things",), ("less", "to")),
    "rate": Finding(rate, ("of", "comes_to", "want"), ("to",)),
    "parts": Finding(parts, ("total", "ratio")),
    "volume": Finding(volume, ("sides",)),
}


class MeasureKind(Kind[MeasureFields]):
    """Exact amounts.

    Steps: one for each unit changed, comparison, sum, multiplication or division; one for each weight; two to read a
    scale (what a part is worth, where the arrow is) and one more between marks.
    """

    name = "measure"
    says = "Measures: compared, ordered, converted, read off a scale, levelled with weights, added, kept in step."
    answer_shape = (
        "compare {more: id, first, second or same, difference, unit}; order {order, together}; convert {amount, number, "
        "unit, thing?}; read {arrow, reading | between and nearer, unit}; units {unit, count, left}; level {against, "
        "beside, character?}; reach {load, against, beside}; total {total, unit}; rate {amount, unit}; parts {parts, unit}; "
        "volume {volume, unit}; numbers whole, or over/under"
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
    fields = MeasureFields

    def solve(self, fields: MeasureFields, context: Context) -> Solution:
        """As ``find`` asks."""
        return found(fields, fields.find, FINDINGS, context)

    def versions(
        self, fields: MeasureFields, context: Context, year: YearLimits
    ) -> Iterator[tuple[MeasureFields, Context, str]]:
        """The same amounts, or amounts and units of that year in the same order."""
        return versions_of(fields, context, year)


KIND = MeasureKind()
