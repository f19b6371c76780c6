"""Every claim of a page that does not hold: one pass, which looks closely only where a cue word stands."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cache

from ..model.known_facts import KnownFacts
from ..model.prose import Prose
from .claim_class import ClaimClass
from .sentences import Sentences
from .table import CLASSES


@dataclass(frozen=True, slots=True)
class FalseClaim:
    """A claim that does not hold: its class, where it starts in the prose, its words, and what is so."""

    of: str
    start: int
    words: str
    so: str


@cache
def _by_cue() -> Mapping[str, Sequence[ClaimClass]]:
    cues = sorted({cue for each in CLASSES for cue in each.cues})
    return {cue: [each for each in CLASSES if cue in each.cues] for cue in cues}


def find_false_claims(prose: Prose, facts: KnownFacts) -> Iterator[FalseClaim]:
    """The false claims of a page's prose, in order; what is said to be wrong, asked or supposed is passed over."""
    sentences = Sentences(prose)
    looked: set[tuple[str, int]] = set()
    found = set[FalseClaim]()
    for cue in _by_cue().keys() & prose.words:
        for at in _places(cue, prose.lowered):
            start, sentence = sentences.at(at)
            for each in _by_cue()[cue]:
                if (each.name, start) in looked:
                    continue
                looked.add((each.name, start))
                for low, high, so in each.find(sentence, facts):
                    if sentences.states(start + low, start + high):
                        words = " ".join(prose.text[start + low : start + high].split())
                        found.add(FalseClaim(each.name, start + low, words, so))
    yield from sorted(found, key=lambda claim: (claim.start, claim.of))


def _places(cue: str, lowered: str) -> Iterator[int]:
    if len(cue) == 1:  # a unit, close to its number
        yield from (match.start() for match in re.finditer(rf"(?<=\d){cue}\b", lowered))
        return
    at = lowered.find(cue)
    while at >= 0:
        yield at
        at = lowered.find(cue, at + len(cue))


