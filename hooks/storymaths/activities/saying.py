"""Lists, and things counted, as a person writes and says them."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from ..expression.say import alike, ending_places, mixed, number_word, part_name, plain, spoken, written


def listed(parts: Sequence[str], last: str = "and") -> str:
    """``a``, ``a and b``, ``a, b and c``."""
    return f" {last} ".join(filter(None, (", ".join(parts[:-1]), *parts[-1:])))


def capital(sentence: str) -> str:
    """The sentence with its first letter large, the rest as it is."""
    return sentence[:1].upper() + sentence[1:]


def counted(count: Fraction | int, things: str, one: str | None = None) -> str:
    """``3 shells``, ``1 shell``; just the number when the things have no name."""
    name = (one or (things[:-1] if things.endswith("s") else things)) if count == 1 else things
    return f"{written(count)} {name}".strip()


def owner(name: str) -> str:
    """Whose: ``Gull’s``, ``Cass’s``."""
    return f"{name}’s"


__all__ = [
    "alike", "capital", "counted", "ending_places", "listed", "mixed", "number_word", "owner", "part_name", "plain",
    "spoken", "written",
]  # fmt: skip
