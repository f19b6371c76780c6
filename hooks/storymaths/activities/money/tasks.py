"""What can be asked about money, a schema for each task, and what its answers hold. Bare numbers are pence."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, ClassVar, Literal

from pydantic import Field

from ..given import Castless
from ..kind import Exact
from .bill import Bill
from .money_fields import (
    Handful,
    MaybeAmount,
    MoneyFields,
    OneAmount,
    Purse,
    TakenOff,
    WithCoins,
    WithItems,
    WithLess,
    WithPayment,
    WithPrices,
    WithStart,
)


class MakeAmount(WithCoins):
    """Every way to make an amount."""

    task_name: ClassVar[str] = "ways"
    find: Literal["ways"] = "ways"
    count: Annotated[int, Field(ge=1, le=50, strict=True)] | None = None
    """How many coins exactly."""


class MakeInFewest(WithCoins):
    """The ways to make an amount from the fewest coins."""

    task_name: ClassVar[str] = "fewest"
    find: Literal["fewest"] = "fewest"


class GiveChange(WithItems, WithPrices, Castless):
    """The change from what is handed over."""

    task_name: ClassVar[str] = "change"
    find: Literal["change"] = "change"
    paid: Handful
    """The coins and notes handed over."""

    @property
    def bill(self) -> Bill:
        """What is bought."""
        return Bill(items=self.items, prices=self.prices or {})


class ChooseThings(WithPayment, WithPrices):
    """What could be bought, from a price list or at what each of the cast costs."""

    task_name: ClassVar[str] = "buy"
    find: Literal["buy"] = "buy"
    choose: Annotated[int, Field(ge=1, le=12, strict=True)] | None = None
    """How many things to buy."""
    repeats: bool = False
    """Whether a thing may be bought more than once."""
    spend: Literal["all", "within"] = "all"
    """Spend all of it, or no more than it."""


class BuyMany(MoneyFields):
    """How many of one thing an amount buys, or what each of the cast has."""

    task_name: ClassVar[str] = "how_many"
    find: Literal["how_many"] = "how_many"
    amount: MaybeAmount = None
    """The money to spend."""
    price: OneAmount
    """The price of one."""


class AddUp(WithStart, WithItems, WithPrices, WithLess, Castless):
    """What there is in all."""

    task_name: ClassVar[str] = "total"
    find: Literal["total"] = "total"
    purse: Purse = ()
    """The very coins there are, one entry each."""

    @property
    def bill(self) -> Bill:
        """What there is before anything is taken off."""
        return Bill(self.start or 0, self.items, self.prices or {}, self.purse)


class ComparePurses(MoneyFields, Castless):
    """Which of two purses holds more."""

    task_name: ClassVar[str] = "compare"
    find: Literal["compare"] = "compare"
    purse: Handful
    """The very coins there are, one entry each."""
    other: Handful
    """A second purse to compare with the first."""


class FindPrice(WithPayment, WithItems, WithPrices, Castless):
    """A price missing from a bill."""

    task_name: ClassVar[str] = "missing"
    find: Literal["missing"] = "missing"
    alike: Annotated[int, Field(ge=1, le=100, strict=True)] | None = None
    """How many things have the missing price."""

    @property
    def bill(self) -> Bill:
        """What has a price."""
        return Bill(items=self.items, prices=self.prices or {})


class ShareMoney(WithStart, WithItems, WithLess, Castless):
    """What each gets, or what a part comes to."""

    task_name: ClassVar[str] = "share"
    find: Literal["share"] = "share"
    each_less: TakenOff = ()
    """Money taken off each share."""
    among: Annotated[int, Field(ge=1, le=1000, strict=True)] | None = None
    """How many share."""
    fraction: Exact | None = None
    """What part is given."""

    @property
    def bill(self) -> Bill:
        """What there is before anything is taken off."""
        return Bill(self.start or 0, self.items)


class SaveUp(WithStart, WithItems, Castless):
    """How many weeks it takes to save an amount."""

    task_name: ClassVar[str] = "save"
    find: Literal["save"] = "save"
    amount: OneAmount
    """The money to save."""
    each: OneAmount
    """What is saved each week in the end."""

    @property
    def bill(self) -> Bill:
        """What is saved before the weeks asked for."""
        return Bill(self.start or 0, self.items)


MakeTask = MakeAmount | MakeInFewest
"""Tasks whose amount is made from coins."""
MoneyTask = MakeTask | GiveChange | ChooseThings | BuyMany | AddUp | ComparePurses | FindPrice | ShareMoney | SaveUp


@dataclass(frozen=True, slots=True)
class CoinWay:
    """What each coin of one way is worth, the largest first."""

    coins: tuple[int, ...]
    count: int


@dataclass(frozen=True, slots=True)
class ChangeDue:
    """The change, and the fewest coins it can be given in."""

    change: int
    coins: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Purchase:
    """What is bought, by its name or a character's id."""

    things: tuple[str, ...]
    spent: int
    left: int


@dataclass(frozen=True, slots=True)
class HowMany:
    """How many can be bought, and who buys."""

    count: int
    left: int
    character: str | None = None


@dataclass(frozen=True, slots=True)
class Total:
    """What there is in all."""

    total: int


@dataclass(frozen=True, slots=True)
class PurseCompared:
    """Which purse holds more, and how much more."""

    more: Literal["first", "second", "same"]
    difference: int


@dataclass(frozen=True, slots=True)
class Price:
    """What one costs."""

    price: int


@dataclass(frozen=True, slots=True)
class Share:
    """What each gets."""

    share: int


@dataclass(frozen=True, slots=True)
class Weeks:
    """How many weeks it takes."""

    weeks: int


MoneyAnswer = CoinWay | ChangeDue | Purchase | HowMany | Total | PurseCompared | Price | Share | Weeks
