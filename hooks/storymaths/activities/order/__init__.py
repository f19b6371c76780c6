"""Characters put in order: by a fact, equals shown as equal, or by clues that may leave more orders than one."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any, ClassVar

from ...model.activity import Context, Solution
from ...model.year import YearLimits
from ..kind import Kind
from .solve import solve
from .tasks import OrderByClues, OrderByFact, OrderFound, OrderTask, schema_for
from .versions import versions_of


class Order(Kind[OrderTask, OrderFound]):
    """An order of the cast.

    Steps of thought: with values, one less than the places to fill; with clues, one for each clue.
    """

    name: ClassVar[str] = "order"
    says: ClassVar[str] = "Characters in order by what they have, or every order that some clues allow."
    answer_shape: ClassVar[str] = (
        '{"order": [[names that are equal], …]}, from the end the activity starts with; as the cast is listed where free'
    )
    tasks = (OrderByFact, OrderByClues)
    example: ClassVar[str] = """\
kind: order
title: Who carried the least?
cast: {gull: {}, crab: {}, seal: {}, limpet: {}}
clues:
  - limpet < crab
  - gull between crab and seal
  - seal > limpet
answers:
  - limpet < crab < gull < seal
  - limpet < seal < gull < crab
"""
    practises: ClassVar[dict[str, str]] = {
        "1NPV-2": "numbers put in order, with < and =",
        "2NPV-1": "two-digit numbers compared by their tens, then their ones",
        "2NPV-2": "two-digit numbers in their places along a line",
    }

    def schema_for(self, raw: Mapping[str, Any]) -> type[OrderTask]:
        """By clues where there are any."""
        return schema_for(raw)

    def solve(self, fields: OrderTask, context: Context) -> Solution[OrderFound]:
        """The one order by the fact; or with clues every order, sorted as the cast is listed."""
        return solve(fields, context)

    def versions(
        self, fields: OrderTask, context: Context, year: YearLimits
    ) -> Iterator[tuple[OrderTask, Context, str]]:
        """With clues the same; with values, ones of the year's size that make every digit count."""
        return versions_of(fields, context, year)


KIND = Order()
