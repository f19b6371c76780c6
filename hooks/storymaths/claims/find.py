"""Every claim of a page that does not hold: one pass, which looks closely only where a cue word stands."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from ..model.known_facts import KnownFacts
from ..model.prose import Prose
from . import phrases_told
from .amounts import InFigures, count_numbers
from .claim_class import ClaimClass
from .form import Form
from .number_words import WORDS_OF_NUMBERS
from .phrases_told import ALL_ALONE, ALONE, NUMBERS
from .sentences import Sentences
from .table import CLASSES

_CUES = frozenset(cue for each in CLASSES for cue in each.cues)
_SIGNS = tuple(sign for sign in ("£", "/", "°", "−", ":", ": ", "%") if sign in _CUES)
"""Cues that are no words."""
_CLOSE = {
    ":": re.compile(r":(?=\d\d)(?<=\d:)"),
    "−": re.compile(r"−(?=\d)(?<![\d)] −)"),
    **{word: re.compile(rf"{word} [\w-]+ (?:comes|is|you|we)\b") for word in ("before", "after")},
    **{letter: re.compile(rf"{letter}(?= [+−×÷=])(?<![a-z]{letter})") for letter in ("n", "x", "y")},
    ": ": re.compile(r": (?=[^.;?!:]{1,60}, [^.;?!:]{1,60} and )"),
    "and": re.compile(r"and(?= \d)(?:(?<=, \d and)|(?<=, \d\d and))"),
    "each": re.compile(r"each(?<=[nr] each)"),  # on, in, for each
    "that": re.compile(r"that(?= is [\dtfsen]|[’']s [\dtfsen])"),
    "partner": re.compile(r"partners? (?:of|to|for)\b"),
    "pairs": re.compile(r"pairs (?:of|to|for|that|which|making|include)\b"),
    "pair": re.compile(r"pair (?:of|to|for|that|which|making|is)\b"),
}
"""Cues that count only with what stands beside them: many pages say "before", and few "before 9 comes".

Each opens with plain letters, which are looked for many times as fast."""
_WORD = re.compile(r"[a-z]+|\d+")
_GOES_ON = Form(r" and (?:another|\d+ more|then) ?")
"""What follows where more is added than has been read."""


@dataclass(frozen=True, slots=True, order=True)
class FalseClaim:
    """A claim that does not hold: where it starts in the prose, its class, its words, and what is so."""

    start: int
    of: str
    words: str
    so: str


_ORDER = {each.name: at for at, each in enumerate(CLASSES)}
_BY_CUE: Mapping[str, Sequence[ClaimClass]] = {cue: [each for each in CLASSES if cue in each.cues] for cue in _CUES}


def find_false_claims(prose: Prose, facts: KnownFacts) -> list[FalseClaim]:
    """The false claims of a page's prose, in order; what is said to be wrong, asked or supposed is passed over."""
    cues = prose.words & _CUES | {sign for sign in _SIGNS if sign in prose.text}
    sentences = Sentences(prose)
    wanted: dict[int, dict[str, ClaimClass]] = {}
    for each, offset in _with_two_numbers(sentences):
        if sentences.may_state(each, offset):
            wanted[each] = {phrases_told.CLASS.name: phrases_told.CLASS}
    for cue in cues:
        for at in _places(cue, prose.lowered):
            wanted.setdefault(sentences.number_at(at), {}).update((each.name, each) for each in _BY_CUE[cue])
    return sorted(
        {claim for each, classes in wanted.items() for claim in _in_sentence(sentences, each, classes, facts)}
    )


def _with_two_numbers(sentences: Sentences) -> Iterator[tuple[int, int]]:
    """The sentences that hold two numbers, or what counts as two, with where the first of them stands."""
    first: dict[int, int] = {}
    found: set[int] = set()
    for match in NUMBERS.finditer(sentences.prose.lowered):
        each = sentences.number_at(match.start())
        if each not in first:
            first[each] = match.start()
        elif each not in found:
            found.add(each)
            yield each, first[each]
    for match in ALONE.finditer(sentences.prose.lowered):
        each = sentences.number_at(match.start())
        if each not in found and (each in first or match.group() in ALL_ALONE):
            found.add(each)
            yield each, min(match.start(), first.get(each, match.start()))


def _places(cue: str, lowered: str) -> Iterator[int]:
    if cue in _CLOSE:
        yield from (match.start() for match in _CLOSE[cue].finditer(lowered))
        return
    if len(cue) == 1 and cue.isalpha():  # a unit, close to its number
        yield from (match.start() for match in re.finditer(rf"(?<=\d){cue}\b", lowered))
        return
    at, long = lowered.find(cue), len(cue)
    while at >= 0:
        if not (lowered[at - 1 : at].isalpha() or lowered[at + long : at + long + 1].isalpha()):
            yield at
        at = lowered.find(cue, at + long)


def _in_sentence(
    sentences: Sentences, each: int, classes: Mapping[str, ClaimClass], facts: KnownFacts
) -> Iterator[FalseClaim]:
    start, sentence = sentences.sentence(each)
    words = _WORD.findall(sentence)
    held = frozenset(words)
    equals = "=" in sentence
    called = [one for one in classes.values() if not one.verbs or equals or not one.verbs.isdisjoint(held)]
    if called:
        counted = count_numbers(words)
        called = [one for one in called if counted >= one.numbers]
    if not called:
        return
    figures = InFigures(sentence, ()) if WORDS_OF_NUMBERS.isdisjoint(held) else InFigures.of(sentence)
    told: list[tuple[int, int]] = []
    for one in sorted(called, key=lambda one: _ORDER[one.name]):
        for low, high, so, supposed in one.find(figures.text, facts):
            if any(low < after and before < high for before, after in told):
                continue  # one mistake is told once
            first, last = start + figures.place(low), start + figures.place(high, end=True)
            if sentences.states(first, last, supposed) and not _GOES_ON.match(figures.text, high):
                told.append((low, high))
                yield FalseClaim(first, one.name, " ".join(sentences.prose.text[first:last].split()), so)
