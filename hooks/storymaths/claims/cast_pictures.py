"""What the words for a character's picture count, held to that character's own facts.

It reads a number before what a fact counts, with a word between them at most: four legs, two yellow stripes. It leaves a
count that, with the other numbers told, comes to the fact: eight walking legs and two claws. Source: the book's record.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from typing import NamedTuple

from ..model.book import Character, FactAbout
from .number_words import NUMBER_IN_WORDS, number_in_words

_N = rf"(?<![\w.])(?:\d+(?![\w.:])|{NUMBER_IN_WORDS})"


class Unlike(NamedTuple):
    """A count of a picture's words that a fact contradicts."""

    words: str
    so: str


def unlike_picture(character: Character, facts: Mapping[str, FactAbout]) -> Iterator[Unlike]:
    """The counts in the words for a character's picture that its facts do not bear out."""
    alt = character.alt or ""
    counts = [_worth(match) for match in re.findall(_N, alt, re.IGNORECASE)]
    for fact, value in character.facts.items():
        if not counts or isinstance(value, bool) or not isinstance(value, int) or value == sum(counts):
            continue
        unit = facts[fact].unit if fact in facts else ""
        names = "|".join(re.escape(word) for word in {unit, fact.replace("_", " ")} - {""})
        told = re.search(rf"(?P<count>{_N}) (?:[a-z-]+ )?(?:{names})\b", alt, re.IGNORECASE) if names else None
        if told and _worth(told["count"]) != value:
            yield Unlike(told.group(), f"{character.name} has {fact}: {value}")


def _worth(text: str) -> int:
    return int(text) if text.isdigit() else number_in_words(text.lower())
