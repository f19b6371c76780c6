"""Lists, and things counted, as a person writes and says them."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from ..expression.noun import Noun, singular
from ..expression.say import alike, ending_places, mixed, number_word, part_name, plain, spoken, written


def listed(parts: Sequence[str], last: str = "and") -> str:
    """``a``, ``a and b``, ``a, b and c``."""
    return f" {last} ".join(filter(None, (", ".join(parts[:-1]), *parts[-1:])))


def capital(sentence: str) -> str:
    """The sentence with its first letter large, the rest as it is."""
    return sentence[:1].upper() + sentence[1:]


def counted(count: Fraction | int, things: str) -> str:
    """``3 shells``, ``1 shell``; just the number when the things have no name."""
    return f"{written(count)} {one_or_many(count, things)}".strip()


def one_or_many(count: Fraction | int, things: str) -> str:
    """``shell`` when there is one, else ``shells``."""
    return things if count != 1 else things.one if isinstance(things, Noun) else singular(things)


def there_are(count: Fraction | int, things: str) -> str:
    """``There is 1 shell``, ``There are 3 shells``."""
    return f"There {'is' if count == 1 else 'are'} {counted(count, things)}"


def owner(name: str) -> str:
    """Whose: ``Gull’s``, ``Cass’s``."""
    return f"{name}’s"


__all__ = [
    "alike", "capital", "counted", "ending_places", "listed", "mixed", "number_word", "one_or_many", "owner",
    "part_name", "plain", "spoken", "there_are", "written",
]  # fmt: skip
