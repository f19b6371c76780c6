"""What a character's picture and shape are said to count: the words for it, held to the facts, and the facts to the shape.

It reads a number before what a fact counts, with a word between them at most: four legs, two yellow stripes. It leaves a
count of one sort that, with the other numbers told, comes to the fact: eight walking legs and two claws. Of a
character who has a named solid, it holds the faces of each sort, edges and corners. Source: the book's record, and
site_data/facts.yaml.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from typing import NamedTuple

from ..model.book import Character, FactAbout
from ..model.known_facts import KnownShapes
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
        if not counts or isinstance(value, bool) or not isinstance(value, int):
            continue
        unit = facts[fact].unit if fact in facts else ""
        names = "|".join(re.escape(word) for word in {unit, fact.replace("_", " ")} - {""})
        told = re.search(rf"(?P<count>{_N}) (?P<sort>[a-z-]+ )?(?:{names})\b", alt, re.IGNORECASE) if names else None
        if told and _worth(told["count"]) != value and not (told["sort"] and value == sum(counts)):
            yield Unlike(told.group(), f"{character.name} has {fact}: {value}")


def unlike_shape(character: Character, shapes: KnownShapes) -> Iterator[tuple[str, Unlike]]:
    """The facts that say how many faces, edges or corners a character's solid has, where it cannot have so many."""
    named = [value for value in character.facts.values() if isinstance(value, str)]
    for name in {*named} & {*shapes.by_name, *shapes.faces_by_name}:
        for fact, value in character.facts.items():
            if isinstance(value, bool) or not isinstance(value, int):
                continue
            part = shapes.by_part.get(fact.replace("_", " "))
            of_part = shapes.by_name.get(name, {}).get(part) if part else None
            of_sort = next((counts for sort, counts in shapes.faces_by_name.get(name, {}).items() if sort == fact), ())
            counts = of_sort if of_part is None else (of_part,)
            if counts and value not in counts:
                yield fact, Unlike(f"{fact}: {value}", f"a {name} has {counts[0]}")


def _worth(text: str) -> int:
    return int(text) if text.isdigit() else number_in_words(text.lower())
