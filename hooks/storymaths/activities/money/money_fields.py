"""Fields that tasks with money share, and what becomes of their amounts in a version for another year."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from enum import Enum
from typing import Annotated, Self

from pydantic import Field

from ...model.fields import Text
from ..changed_fields import each, with_changed
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
    """``amount`` says what an amount becomes, ``coin`` what a coin becomes, in pence; nought stays nought."""

    amount: Callable[[int], int]
    coin: Callable[[int], int]

    def of_lots(self, lots: object) -> object:
        """As many of each as before."""
        assert isinstance(lots, tuple)
        return tuple((count, self.amount(worth)) for count, worth in lots)


class MoneyFields(ActivityFields):
    """A task with money."""

    def with_money(self, change: MoneyChange) -> Self:
        """The task with other money."""
        amounts = each(lambda pence: change.amount(pence) if pence else 0)
        coins = each(change.coin)
        return with_changed(self, {Holds.AMOUNTS: amounts, Holds.COINS: coins, Holds.LOTS: change.of_lots})


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
