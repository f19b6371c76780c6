"""Counting in steps: runs of numbers that are said to be counted, and the step that they keep or miss."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator
from itertools import pairwise

from ..expression.number import Rational
from ..model.known_facts import KnownFacts
from .amounts import NUMBER, N, difference, number, says
from .claim_class import ClaimClass, Untrue
from .form import Form

_NAMED = {
    "ones": 1, "twos": 2, "threes": 3, "fours": 4, "fives": 5, "sixes": 6, "sevens": 7, "eights": 8, "nines": 9, "tens": 10,
    "elevens": 11, "twelves": 12, "twenties": 20, "twenty-fives": 25, "fifties": 50, "hundreds": 100,
}  # fmt: skip
_STEP = rf"(?:(?P<named>{'|'.join(_NAMED)})|(?P<figures>\d+)s?)"
_STEPS = Form(
    rf"\b(?:count\w*(?: on| back| up| down| forwards?| backwards?)?(?: from {N})? (?:in|by)|(?:go\w*|jump\w*|skip\w*|step\w*)(?:"
    rf" up| down| on| back)? in|"
    rf"steps of|jumps of|multiples of|the) (?:steps of )?{_STEP}(?P<table> times table)?(?:,? from {N})?\b"
)
_BACK_OR_ON = Form(r"\bcount\w* (?:back|on|up|down|forwards?|backwards?)\b")
_STEPS_AFTER = Form(
    rf",? (?:is|are|shows?|all|was|counts?|goes?|go)(?: all)? ?(?:counting|jumping|going|skip counting|steps|up|down"
    rf"|multiples)?(?: on| back| up| down)?"
    rf" ?(?:in|of|by) (?:steps of )?{_STEP}"
)
_SAY_IN = Form(
    rf"\bin {_STEP},? (?:we|you|they|it|children|the count|the counting) (?:say|count|get|goes|go|says|is)\b"
)
_OTHER_STEPS = Form(r"(?:,? and |,? or |, )\d")
_COUNTED = Form(
    r"\b(?:count\w*|steps?(?! on\b| over\b)|pattern|sequence|multiples|each time|goes up|go up|goes down|times table|skip"
    r"|jumps?|number line|and so on)\b"
)
_NEXT = Form(
    rf"\bnext (?:number |one )?(?:in|after) (?:the )?(?:pattern |sequence |count )?(?P<run>{N}(?:(?:,? and |, ){N}){{2,40}})"
    rf" is (?P<next>{N})"
)
_RUN = Form(rf"{N}(?:(?:,? and |, )(?:then )?{N}){{2,40}}(?! (?:faces|sides|[a-z]+s)\b(?<!is)(?<!was))")
_CUES = frozenset("count counting counted counts steps step pattern sequence multiples times jumps skip".split())
_FEWEST, _FEWEST_UNNAMED = 3, 4


def _find(sentence: str, _: KnownFacts) -> Iterator[Untrue]:
    named = _STEPS.search(sentence)
    if named is None:
        named = _SAY_IN.search(sentence)
    for run in _RUN.finditer(sentence, 0, named.start() if named else len(sentence)):
        after = _STEPS_AFTER.match(sentence, run.end())
        if after and not _names_another(sentence, after.end()):
            yield from _kept(run, after)
            return
    if named and named.group().startswith("the ") and not named["table"]:
        named = None
    if named is None and not _COUNTED.search(sentence):
        return
    for match in _NEXT.finditer(sentence):
        told = [number(each.group()) for each in NUMBER.finditer(match["run"])]
        step = told[1] - told[0]
        if all(b - a == step for a, b in pairwise(told)) and number(match["next"]) != told[-1] + step:
            yield Untrue(*match.span(), f"the next is {says(told[-1] + step)}")
            return
    if sum(f" {word}" in sentence for word in _NAMED) > 1:  # in tens, then in ones
        return
    if named and _OTHER_STEPS.match(sentence, named.end()) and not named.group().endswith("s"):
        return
    for run in _RUN.finditer(sentence, named.end() if named else 0):
        values = [number(each.group()) for each in NUMBER.finditer(run.group())]
        if named:
            step = _NAMED[named["named"]] if named["named"] else int(named["figures"])
            wrong = [(a, b) for a, b in pairwise(values) if abs(b - a) != step]
            is_wrong = bool(wrong) and len(values) >= _FEWEST and len(wrong) < len(values) - 1
            if is_wrong:
                yield _told(run, step, *wrong[0])
        elif len(values) >= _FEWEST_UNNAMED:
            yield from _missed(run, values)
            if _BACK_OR_ON.search(sentence, 0, run.start()):
                yield from _missed_once(run, values)


def _names_another(sentence: str, at: int) -> bool:
    """Whether another step is told further on."""
    return any(f" {word}" in sentence[at:] for word in _NAMED)


def _kept(run: re.Match[str], told: re.Match[str]) -> Iterator[Untrue]:
    """A run of three or more before the words that name its step."""
    values = [number(each.group()) for each in NUMBER.finditer(run.group())]
    step = _NAMED[told["named"]] if told["named"] else int(told["figures"])
    wrong = [(a, b) for a, b in pairwise(values) if abs(b - a) != step]
    if wrong and len(wrong) < len(values) - 1:
        yield _told(run, step, *wrong[0])


def _missed_once(run: re.Match[str], values: list[Rational]) -> Iterator[Untrue]:
    """A count on or back in which one step inside is another than all the rest."""
    steps = [b - a for a, b in pairwise(values)]
    (step, times), *others = Counter(steps).most_common()
    if len(others) == 1 and others[0][1] == 1 and times >= 3 and steps[0] == steps[-1] == step:
        at = next(index for index, each in enumerate(steps) if each != step)
        yield _told(run, difference(step, 0), values[at], values[at + 1])


def _missed(run: re.Match[str], values: list[Rational]) -> Iterator[Untrue]:
    """A run that keeps one step all but once at its end, or all but twice round one number inside."""
    steps = [b - a for a, b in pairwise(values)]
    (step, times), *others = Counter(steps).most_common()
    around = [index for index, each in enumerate(steps) if each != step]
    lone = len(around) == 1 and around[0] in (0, len(steps) - 1)
    inside = len(around) == 2 and around[1] == around[0] + 1 and steps[around[0]] + steps[around[1]] == 2 * step
    if step and others and times >= 2 and (lone or inside):
        yield _told(run, difference(step, 0), values[around[0]], values[around[0] + 1])


def _told(run: re.Match[str], step: Rational, before: Rational, after: Rational) -> Untrue:
    return Untrue(*run.span(), f"the step from {says(before)} to {says(after)} is not {says(step)}")


CLASS = ClaimClass(
    name="counting in steps",
    reads="Three numbers or more after words that name the step (count in fives: 5, 10, 15; multiples of 4; the 3 times table); "
    "four or more that the sentence says are counted, a pattern or steps, where all but one keep one step.",
    leaves="Lists that nothing says are counted, and those that keep no one step.",
    source="Common practice, no source: the difference of one number and the next.",
    cues=frozenset(_NAMED) - {"ones", "twenty-fives"} | _CUES,
    find=_find,
    numbers=3,
)  # fmt: skip
