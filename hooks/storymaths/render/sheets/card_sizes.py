"""The sizes of card there are, and how cards stand on a page."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from .sheet import Part


@dataclass(frozen=True, slots=True)
class Size:
    """A size of card in millimetres, and how many stand across and down on a page."""

    wide: int
    high: int
    across: int
    down: int

    @property
    def on_a_page(self) -> int:
        """Cards on a full page."""
        return self.across * self.down

    def __str__(self) -> str:
        return f"{self.wide} × {self.high} mm"


LARGE = Size(90, 130, 2, 2)
MIDDLE = Size(90, 65, 2, 4)
SMALL = Size(45, 65, 4, 4)
SIZES = (LARGE, MIDDLE, SMALL)
SIZE_FOR: Mapping[str, Size] = {"child": SMALL, "pair": SMALL, "group": MIDDLE, "class": LARGE}
"""By who holds them: small on a table for two, large for all to see."""


def cards_part(heading: str, size: Size, cards: Sequence[Mapping[str, Any]], copies: int = 1) -> Part:
    """Cards on as many pages as they take; whole sets after the first are the same again."""
    again = [{**card, "again": True} for card in cards] * (copies - 1)
    return Part(
        "cards",
        {
            "heading": heading,
            "size": str(size),
            "card": [size.wide, size.high],
            "across": size.across,
            "down": size.down,
            "cards": [*cards, *again],
        },
    )


def sets_on_a_page(size: Size, cards: int, wanted: int) -> int:
    """Whole sets that one page holds, no more than are wanted; one where a set takes several pages."""
    return max(1, min(wanted, size.on_a_page // max(1, cards)))
