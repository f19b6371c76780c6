"""What is made of the lists alone, made once: they stay the same from one check to the next."""

from __future__ import annotations

from collections.abc import Callable
from typing import TypeVar

from ..model.reference import Reference

Made = TypeVar("Made")


def once_for(make: Callable[[Reference], Made]) -> Callable[[Reference], Made]:
    """A function that keeps what it made of the lists it was last given; for these very lists it gives it again."""
    last: tuple[Reference, Made] | None = None

    def ask(reference: Reference) -> Made:
        nonlocal last
        kept = last
        if kept is None or kept[0] is not reference:
            last = kept = reference, make(reference)
        return kept[1]

    return ask
