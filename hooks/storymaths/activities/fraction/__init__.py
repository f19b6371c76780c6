"""Fractions: of an amount, of a set, of a shape; which are equal, in what order, where on a line."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from typing import Annotated, ClassVar, Literal

from pydantic import Field

from ...model.activity import Context, Solution
from ...model.book import FactValue
from ...model.fields import Text
from ...model.year import YearLimits
from ..finding import Finding, found
from ..kind import ActivityFields, Exact, Kind
from .amounts import part, rest, whole
from .line import line
from .number import Written
from .numbers import equal, order, write
from .sets import groups, part_of_cast, share
from .shapes import FractionShape, shape
from .versions import versions_of
from .words import WrittenAs

Find = Literal["part", "rest", "whole", "share", "set", "groups", "shape", "equal", "order", "line", "write"]
SomeNumbers = Annotated[tuple[Written, ...], Field(max_length=24)]
AtMostAHundred = Annotated[int, Field(ge=1, le=100, strict=True)]
UpToAThousand = Annotated[int, Field(ge=1, le=1000, strict=True)]


class FractionFields(ActivityFields):
    """What a fraction activity may say; ``find`` tells which of the rest it needs."""

    find: Find = "part"
    """``part`` of an amount; what is left (``rest``); the ``whole`` from a part; which counts ``share`` out;
    what fraction of the cast fits (``set``); who together have a fraction (``groups``); how much of a ``shape``;
    which are ``equal``; in what ``order``; where on a ``line``; how else to ``write`` them."""
    fraction: Written | None = None
    """The fraction, such as ``3/4``."""
    of: Exact | None = None
    """The whole amount."""
    part: Exact | None = None
    """That fraction of an unknown whole."""
    rest: Exact | None = None
    """What is not that fraction of an unknown whole."""
    taken: Annotated[tuple[Exact, ...], Field(max_length=6)] = ()
    """Amounts taken away after the fraction."""
    things: Text | None = None
    """What is counted, in the plural: ``shells``."""
    has: FactValue | None = None
    """The value of the fact that counts as fitting; true when left out."""
    counts: Annotated[tuple[UpToAThousand, ...], Field(max_length=100)] = ()
    """Counts to be shared, or not."""
    up_to: UpToAThousand | None = None
    """For ``share``, every count from 1 to this; for ``equal``, the most parts a fraction may have."""
    shapes: Annotated[tuple[FractionShape, ...], Field(max_length=12)] = ()
    numbers: SomeNumbers = ()
    """Numbers as written: fractions, decimals, percentages."""
    greatest_first: bool = False
    """Order from the greatest."""
    ends: tuple[Exact, Exact] = (Fraction(0), Fraction(1))
    """The numbers at the ends of a line."""
    parts: AtMostAHundred | None = None
    """How many equal parts a line is cut into."""
    marks: Annotated[tuple[Annotated[int, Field(ge=0, le=100, strict=True)], ...], Field(max_length=24)] = ()
    """Marks of a line to be read, counted from 0 at its start."""
    written_as: WrittenAs | None = None


FINDINGS = {
    "part": Finding(part, ("fraction", "of^fact"), ("things",)),
    "rest": Finding(rest, ("fraction", "of"), ("taken", "things")),
    "whole": Finding(whole, ("fraction", "part^rest"), ("things",)),
    "share": Finding(share, ("fraction", "counts^up_to^fact")),
    "set": Finding(part_of_cast, ("fact",), ("has",)),
    "groups": Finding(groups, ("fraction", "fact"), ("things",)),
    "shape": Finding(shape, ("shapes",), ("fraction", "written_as")),
    "equal": Finding(equal, ("numbers|fraction",), ("numbers", "fraction", "up_to")),
    "order": Finding(order, ("numbers",), ("greatest_first",)),
    "line": Finding(line, ("parts", "numbers|marks"), ("ends",)),
    "write": Finding(write, ("numbers",), ("written_as",)),
}


class FractionKind(Kind[FractionFields]):
    """Fractions of anything.

    Steps: of an amount, one to share it into equal parts, one more to take several of them, one for each amount that
    goes; in a list, one for each comparison; two to look at a set, a line or equal fractions; three for groups.
    """

    name = "fraction"
    says = "Fractions of an amount, of the cast, of a shape or as numbers: found, compared, ordered, placed."
    answer_shape = (
        "part {of, part, character?}; rest {gone, left}; whole {whole}; share {count, part, character?}; "
        "set {characters, fraction, simplest}; groups {characters, together}; shape {shape, fraction, written?}; "
        "equal {equal}; order {order, equal}; line {number, mark | between}; write {number, written, simplest?}"
    )
    example = """
kind: fraction
title: A quarter each, and none left over
find: share
fraction: 1/4
fact: pebbles
cast:
  gull: {pebbles: 8}
  crab: {pebbles: 10}
  seal: {pebbles: 12}
  puffin: {pebbles: 14}
  whelk: {pebbles: 16}
"""
    practises: ClassVar[Mapping[str, str]] = {
        "2MD-2": "shares an amount into equal groups and writes it as a division",
        "1NF-2": "counts in equal steps to see which amounts share out",
    }
    fields = FractionFields

    def solve(self, fields: FractionFields, context: Context) -> Solution:
        """As ``find`` asks."""
        return found(fields, fields.find, FINDINGS, context)

    def versions(
        self, fields: FractionFields, context: Context, year: YearLimits
    ) -> Iterator[tuple[FractionFields, Context, str]]:
        """The same numbers, then the year's own denominators with amounts that share out."""
        return versions_of(fields, context, year)


KIND = FractionKind()
