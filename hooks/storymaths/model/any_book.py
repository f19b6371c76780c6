"""Something to do with any book of a kind: what to look for in it, and sums whose numbers the reader finds there."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated, Literal, get_args

from pydantic import Field, model_validator

from .at_home import AtHome
from .fields import Count, Pages, Strict, Text
from .prose import Loc

SumName = Literal[
    "there-and-back", "difference", "share", "gather", "hidden", "hours", "longer", "two-places", "lots", "order",
    "halfway", "refrain",
]  # fmt: skip
NUMBERS_OF: dict[SumName, tuple[int, int]] = {
    "there-and-back": (1, 1), "difference": (2, 2), "share": (2, 2), "gather": (2, 6), "hidden": (2, 2), "hours": (2, 2),
    "longer": (3, 3), "two-places": (1, 1), "lots": (2, 2), "order": (2, 6), "halfway": (1, 1), "refrain": (2, 2),
}  # fmt: skip
"""Of each sum, how many numbers it is made of, at least and at most. ``scripts/any-book/sums.js`` works it out."""
assert NUMBERS_OF.keys() == set(get_args(SumName))


class NumberFound(Strict):
    """A number that the reader finds in their own book."""

    ask: Text
    """The question whose answer it is."""
    at_least: Annotated[int, Field(ge=0, strict=True)] = 1
    """The smallest it may be. 1 if you say nothing."""
    at_most: Count
    """The largest it may be, within the reach of the year."""


class FoundSum(Strict):
    """A sum with the numbers that are found in a book, worked out on the page."""

    sum: SumName
    """What is worked out: there-and-back, difference, share, gather, hidden, hours, longer, two-places, lots, order, halfway or refrain."""
    of: tuple[Text, ...] = ()
    """What is counted, in the plural, where it is the same in every such book: the things, and whom they are for."""
    numbers: Annotated[tuple[NumberFound, ...], Field(min_length=1)]
    """The numbers to find, in the order of the sum."""
    such_as: Annotated[tuple[tuple[int, ...], ...], Field(min_length=1)]
    """Examples: numbers as some book may have them, each printed with what they come to."""

    @model_validator(mode="after")
    def _has_its_numbers(self) -> FoundSum:
        fewest, most = NUMBERS_OF[self.sum]
        if not fewest <= len(self.numbers) <= most:
            many = str(fewest) if fewest == most else f"{fewest} to {most}"
            raise ValueError(f"{self.sum} is worked out from {many} numbers, and here are {len(self.numbers)}")
        for numbers in self.such_as:
            if len(numbers) != len(self.numbers):
                raise ValueError(f"each example has a number for each question, {len(self.numbers)} in all")
            for number, found in zip(numbers, self.numbers, strict=True):
                if not found.at_least <= number <= found.at_most:
                    raise ValueError(
                        f"{number} is not from {found.at_least} to {found.at_most}, as its question allows"
                    )
        return self


class AnyBook(AtHome):
    """One thing to do with any book of a kind, at home or in class."""

    kind: Literal["any-book"]
    look_for: Text
    """What shows that a book is one of these: what happens in it, and what to look for on its pages."""
    expect: Text
    """What numbers to expect, and what to do with a book whose numbers are too large."""
    work_out: FoundSum
    """What is worked out from the numbers that are found."""

    def book_at(self, path: str) -> None:
        """It goes with any."""

    @property
    def place(self) -> int:
        """They have no order."""
        return 1

    def pages_named(self) -> Iterator[tuple[Loc, Pages]]:
        """Those of a book that nobody here knows."""
        yield from ()
