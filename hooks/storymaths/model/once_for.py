"""What is made of the lists alone, made once: they stay the same from one check to the next."""

from __future__ import annotations

from collections.abc import Callable
from typing import TypeVar

Lists = TypeVar("Lists")
Made = TypeVar("Made")


def once_for(make: Callable[[Lists], Made]) -> Callable[[Lists], Made]:
    """A function that keeps what it made of the lists it was last given; for these very lists it gives it again."""
    last: tuple[Lists, Made] | None = None

    def ask(lists: Lists) -> Made:
        nonlocal last
        kept = last
        if kept is None or kept[0] is not lists:
            last = kept = lists, make(lists)
        return kept[1]

    return ask
