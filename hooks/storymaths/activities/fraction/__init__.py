"""Fractions: of an amount, of a set, of a shape; which are equal, in what order, where on a line."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import ClassVar

from ...model.activity import Context, Solution
from ...model.year import YearLimits
from ..kind import Kind
from .answers import FractionAnswer
from .solve import solve
from .tasks import (
    EqualTask,
    FractionTask,
    GroupsTask,
    LineTask,
    OrderTask,
    PartTask,
    RestTask,
    SetTask,
    ShapeTask,
    ShareTask,
    WholeTask,
    WriteTask,
)
from .versions import versions_of


class FractionKind(Kind[FractionTask, FractionAnswer]):
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
    tasks = (
        PartTask,
        RestTask,
        WholeTask,
        ShareTask,
        SetTask,
        GroupsTask,
        ShapeTask,
        EqualTask,
        OrderTask,
        LineTask,
        WriteTask,
    )
    told_by = "find"

    def solve(self, fields: FractionTask, context: Context) -> Solution[FractionAnswer]:
        """As ``find`` asks."""
        return solve(fields, context)

    def versions(
        self, fields: FractionTask, context: Context, year: YearLimits
    ) -> Iterator[tuple[FractionTask, Context, str]]:
        """The same numbers, then the year's own denominators with amounts that share out."""
        return versions_of(fields, context, year)


KIND = FractionKind()
