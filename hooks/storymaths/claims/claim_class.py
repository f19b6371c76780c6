"""What a class of claim is: the words that call for a look, what it reads, what it leaves, and whence it knows."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import NamedTuple

from ..model.known_facts import KnownFacts


class Untrue(NamedTuple):
    """Something in a sentence that does not hold: where it starts and ends, and what is so."""

    start: int
    end: int
    so: str
    supposed: bool = False
    """Whether it holds its own condition, so that an "if" in it leaves nothing open."""


IS = frozenset(
    "is are was make makes equal equals has have give gives means lasts takes come comes equal cost costs say says worth"
    " total totals add adds".split()
)
"""Verbs by which one thing is said to be another."""
Find = Callable[[str, KnownFacts], Iterator[Untrue]]
"""Reads a sentence, in small letters and on one line."""


@dataclass(frozen=True, slots=True)
class ClaimClass:
    """A class of claim."""

    name: str
    """What it is about, as a teacher says it."""
    reads: str
    leaves: str
    source: str
    cues: frozenset[str]
    """Words without one of which no sentence is looked at."""
    find: Find
    numbers: int = 0
    """How many numbers, parts such as halves among them, a sentence must hold to be looked at closely."""
    verbs: frozenset[str] = frozenset()
    """Words of which it must hold one, where there are any."""
