"""The money of a country: what its units are called, and what its coins and notes are worth."""

from __future__ import annotations

from .fields import Count, Strict, Text

PARTS = 100
"""How many parts make a whole: pence a pound."""


class MoneyUnit(Strict):
    """A unit of money: its sign, and its name for one and for several."""

    sign: Text
    one: Text
    many: Text


class Currency(Strict):
    """``site_data/money.yaml``: all that activities with money know of a country."""

    source: Text
    whole: MoneyUnit
    """Such as the pound; its sign stands before the number."""
    part: MoneyUnit
    """A hundredth of it, such as the penny; its sign stands after the number."""
    coins: tuple[Count, ...]
    """What each coin is worth, in parts, the smallest first."""
    notes: tuple[Count, ...]
    """What each note is worth, in parts, the smallest first."""

    @property
    def worths(self) -> tuple[int, ...]:
        """What each coin and note is worth, in parts, the smallest first."""
        return tuple(sorted({*self.coins, *self.notes}))

    def is_note(self, worth: int) -> bool:
        """Whether so much is a note: invented ones are, from the smallest real note on."""
        return bool(self.notes) and worth >= min(self.notes)
