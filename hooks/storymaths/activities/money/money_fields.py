"""Fields that tasks with money share, and what becomes of their amounts in a version for another year."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from enum import Enum
from typing import Annotated, Self

from pydantic import Field

from ...model.fields import Text
from ..given import Castless
from ..kind import ActivityFields
from .amount import Pence, SomePence


class Holds(Enum):
    """What a field with money holds; written beside its type, so that a version knows what to change."""

    AMOUNTS = "amounts"
    COINS = "coins"
    LOTS = "lots"
    """So many, and what each is worth."""


OneAmount = Annotated[SomePence, Holds.AMOUNTS]
MaybeAmount = Annotated[SomePence | None, Holds.AMOUNTS]
MaybeNought = Annotated[Pence | None, Holds.AMOUNTS]
TakenOff = Annotated[tuple[SomePence, ...], Field(max_length=6), Holds.AMOUNTS]
PriceList = Annotated[Annotated[Mapping[Text, SomePence], Field(max_length=12)] | None, Holds.AMOUNTS]
CoinKinds = Annotated[tuple[SomePence, ...], Field(max_length=12), Holds.COINS]
Purse = Annotated[tuple[SomePence, ...], Field(max_length=40), Holds.COINS]
Handful = Annotated[tuple[SomePence, ...], Field(min_length=1, max_length=40), Holds.COINS]
Several = Annotated[int, Field(ge=1, le=1000, strict=True)]
Lots = Annotated[tuple[tuple[Several, SomePence], ...], Field(max_length=12), Holds.LOTS]


@dataclass(frozen=True, slots=True)
class MoneyChange:
    """``amount`` says what an amount becomes, ``coin`` what a coin becomes, in pence."""

    amount: Callable[[int], int]
    coin: Callable[[int], int]


class MoneyFields(ActivityFields):
    """A task with money."""

    def with_money(self, change: MoneyChange) -> Self:
        """The task with other money, in the kind's own words: the author's name the old amounts."""
        new: dict[str, object] = {"ask": None}
        for name, value in self:
            metadata = type(self).model_fields[name].metadata
            if Holds.LOTS in metadata:
                new[name] = tuple((count, change.amount(each)) for count, each in value)
            elif Holds.AMOUNTS in metadata or Holds.COINS in metadata:
                new[name] = _with_each(value, change.coin if Holds.COINS in metadata else change.amount)
        return self.model_copy(update=new)


def _with_each(value: object, change: Callable[[int], int]) -> object:
    """The value with every amount in it changed; none and nought stay as they are."""
    if isinstance(value, int):
        return change(value) if value else value
    if isinstance(value, tuple):
        return tuple(_with_each(one, change) for one in value)
    return {name: _with_each(one, change) for name, one in value.items()} if isinstance(value, Mapping) else value


class WithCoins(MoneyFields, Castless):
    """An amount to be made from coins."""

    amount: OneAmount
    """The money to make."""
    coins: CoinKinds = ()
    """Kinds of coin, as many of each as wanted; those of the country when left out."""
    purse: Purse = ()
    """The very coins there are, one entry each."""

    def with_coins(self, amount: int, coins: tuple[int, ...], purse: tuple[int, ...]) -> Self:
        """Another amount, made from other coins."""
        return self.model_copy(update={"amount": amount, "coins": coins, "purse": purse, "ask": None})


class WithStart(MoneyFields):
    """Money there at the start."""

    start: MaybeNought = None
    """Money there already."""


class WithItems(MoneyFields):
    """So many of each price or worth."""

    items: Lots = ()
    """What is bought or saved: ``[[3, 20p]]`` is three at 20p."""


class WithPrices(MoneyFields):
    """Things with a price each."""

    prices: PriceList = None
    """A price list: thing to price."""


class WithLess(MoneyFields):
    """Money that goes."""

    less: TakenOff = ()
    """Money taken off."""


class WithPayment(MoneyFields):
    """Money handed over, and what came back of it."""

    amount: MaybeAmount = None
    """The money to spend or account for."""
    paid: Purse = ()
    """The coins and notes handed over, in place of an amount."""
    change: MaybeNought = None
    """The change that came back."""

    @property
    def handed_over(self) -> int:
        """What is paid before change, in pence."""
        return sum(self.paid) if self.amount is None else self.amount
