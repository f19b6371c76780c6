"""Money: making an amount from coins, change, what could be bought, what a price must have been."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Annotated, ClassVar, Literal

from pydantic import Field

from ...model.activity import Context, Solution
from ...model.fields import Text
from ...model.year import YearLimits
from ..finding import Finding, found
from ..kind import ActivityFields, Exact, Kind
from .amount import Pence, SomePence
from .buying import buy, how_many
from .making import make, make_in_fewest
from .paying import change, missing
from .saving import save, share
from .totals import compare, total
from .versions import versions_of

Find = Literal["ways", "fewest", "change", "buy", "how_many", "total", "compare", "missing", "share", "save"]
Purse = Annotated[tuple[SomePence, ...], Field(max_length=40)]
Several = Annotated[int, Field(ge=1, le=1000, strict=True)]
Items = Annotated[tuple[tuple[Several, SomePence], ...], Field(max_length=12)]


class MoneyFields(ActivityFields):
    """What a money activity may say; ``find`` tells which of the rest it needs. Bare numbers are pence."""

    find: Find = "ways"
    """Every way to make an amount (``ways``), or those of the ``fewest`` coins; ``change``; what one could ``buy``;
    ``how_many`` of one thing; the ``total``; which purse has more (``compare``); a price ``missing`` from a bill;
    a ``share``; how many weeks to ``save``."""
    amount: SomePence | None = None
    """The money to make, spend, save or account for."""
    coins: Annotated[tuple[SomePence, ...], Field(max_length=12)] = ()
    """Kinds of coin, as many of each as wanted; those of the United Kingdom when left out."""
    purse: Purse = ()
    """The very coins there are, one entry each."""
    other: Purse = ()
    """A second purse to compare with the first."""
    count: Annotated[int, Field(ge=1, le=50, strict=True)] | None = None
    """How many coins exactly."""
    prices: Annotated[Mapping[Text, SomePence], Field(max_length=12)] | None = None
    """A price list: thing to price."""
    items: Items = ()
    """What is bought or saved: ``[[3, 20p]]`` is three at 20p."""
    start: Pence | None = None
    """Money there already."""
    less: Annotated[tuple[SomePence, ...], Field(max_length=6)] = ()
    """Money taken off."""
    each_less: Annotated[tuple[SomePence, ...], Field(max_length=6)] = ()
    """Money taken off each share."""
    paid: Purse = ()
    """The coins and notes handed over."""
    change: Pence | None = None
    """The change that came back."""
    price: SomePence | None = None
    """The price of one."""
    each: SomePence | None = None
    """What is saved each week in the end."""
    choose: Annotated[int, Field(ge=1, le=12, strict=True)] | None = None
    """How many things to buy."""
    repeats: bool = False
    """Whether a thing may be bought more than once."""
    spend: Literal["all", "within"] = "all"
    """Spend all of it, or no more than it."""
    alike: Annotated[int, Field(ge=1, le=100, strict=True)] | None = None
    """How many things have the missing price."""
    among: Annotated[int, Field(ge=1, le=1000, strict=True)] | None = None
    """How many share."""
    fraction: Exact | None = None
    """What part is given."""


_BOUGHT = ("items", "prices", "purse", "start")
FINDINGS = {
    "ways": Finding(make, ("amount",), ("coins", "purse", "count")),
    "fewest": Finding(make_in_fewest, ("amount",), ("coins", "purse")),
    "change": Finding(change, ("items|prices", "paid")),
    "buy": Finding(buy, ("amount^paid", "prices^fact"), ("change", "choose", "repeats", "spend")),
    "how_many": Finding(how_many, ("amount^fact", "price")),
    "total": Finding(total, ("|".join(_BOUGHT),), ("less",)),
    "compare": Finding(compare, ("purse", "other")),
    "missing": Finding(missing, ("amount^paid",), ("change", "items", "prices", "alike")),
    "share": Finding(share, ("items|start", "among^fraction"), ("less", "each_less")),
    "save": Finding(save, ("amount", "each"), ("items", "start")),
}


class Money(Kind[MoneyFields]):
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
    fields = MoneyFields

    def solve(self, fields: MoneyFields, context: Context) -> Solution:
        """As ``find`` asks."""
        return found(fields, fields.find, FINDINGS, context)

    def versions(
        self, fields: MoneyFields, context: Context, year: YearLimits
    ) -> Iterator[tuple[MoneyFields, Context, str]]:
        """The same money, or all of it so many times as much, or other amounts and coins of the year."""
        return versions_of(fields, context, year)


KIND = Money()
