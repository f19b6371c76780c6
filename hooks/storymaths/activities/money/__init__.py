"""Money: making an amount from coins, change, what could be bought, what a price must have been."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import ClassVar, get_args

from ...model.activity import Context, Solution
from ...model.year import YearLimits
from ..kind import Kind
from .solve import solve
from .tasks import MoneyAnswer, MoneyTask
from .versions import versions_of


class Money(Kind[MoneyTask, MoneyAnswer]):
    """Money in whole pence.

    Steps: one for each coin, thing or amount reckoned with after the first, and for each multiplication or division;
    no more than twelve.
    """

    name = "money"
    says = "Money: every way to make or spend an amount, fewest coins, change, totals, missing prices."
    answer_shape = (
        "in pence: ways and fewest {coins, count}; change {change, coins}; buy {things, spent, left}; "
        "how_many {count, left, character?}; total {total}; compare {more: first | second | same, difference}; "
        "missing {price}; share {share}; save {weeks}"
    )
    example = """
kind: money
title: Fifteen pence for the ferry
find: buy
amount: 15p
fact: fare
cast:
  gull: {fare: 6}
  crab: {fare: 4}
  seal: {fare: 9}
  puffin: {fare: 5}
  whelk: {fare: 2}
"""
    practises: ClassVar[Mapping[str, str]] = {
        "1NF-2": "counts in 2p, 5p and 10p coins",
        "1AS-2": "writes what coins come to as a number sentence",
        "2NF-1": "finds pairs of coins or prices that make ten pence and more",
        "2AS-1": "adds coins and prices across ten",
        "2AS-2": "finds change as the difference between price and payment",
        "2AS-3": "adds a coin to an amount",
        "2AS-4": "adds and takes away amounts within a pound",
        "2MD-1": "writes coins alike as a multiplication",
        "2MD-2": "asks how many coins or things make an amount",
    }
    tasks = get_args(MoneyTask)
    told_by = "find"

    def solve(self, fields: MoneyTask, context: Context) -> Solution[MoneyAnswer]:
        """As ``find`` asks."""
        return solve(fields, context)

    def versions(
        self, fields: MoneyTask, context: Context, year: YearLimits
    ) -> Iterator[tuple[MoneyTask, Context, str]]:
        """The same money, or all of it so many times as much, or other amounts and coins of the year."""
        return versions_of(fields, context, year)


KIND = Money()
