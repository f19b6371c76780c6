"""The hands of a clock: between which numbers the short hand stands, and which time that is; hours from one to another."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.known_facts import KnownFacts
from .amounts import END_OR_AND, N, number, says
from .claim_class import ClaimClass, Untrue
from .form import Form

_HALFWAY = Form(
    rf"\b(?:half ?way (?:from|between)|in the middle of|in between) (?:the )?(?P<one>{N}) (?:to|and) (?:the )?(?P<two>{N})"
)
_HALFWAY_TO = Form(rf"\bhalf ?way to (?:the )?(?P<two>{N})\b")
_HALF_PAST = Form(rf"\bhalf past (?P<hour>{N})")
_OF_A_CLOCK = Form(r"\b(?:hands?|clock|half past|o[’']clock)\b")
_ANOTHER_TIME = Form(r"\b(?:hours?|before|after|later|earlier|next|then|last)\b")
_AT = Form(rf"\bat the (?P<one>{N}),? (?:so |and |then )?(?:it is|it[’']s|is) (?P<hour>{N}) o[’']clock")
_LONG = Form(r"\b(?:long|minute|big) hand\b")
_FROM = Form(
    rf"\bfrom (?P<one>{N})(?: o[’']clock)? to (?P<two>{N})(?: o[’']clock)? (?:is|are|takes|makes) (?P<span>{N})(?: hours?\b|{END_OR_AND})"
)
_ROUND = 12


def _find(sentence: str, _: KnownFacts) -> Iterator[Untrue]:
    has_half = "half" in sentence or "middle" in sentence or "in between" in sentence
    between = [*_HALFWAY.finditer(sentence)] if has_half and _OF_A_CLOCK.search(sentence) else []
    for match in between:
        one, two = number(match["one"]), number(match["two"])
        if 0 < one <= _ROUND and 0 < two <= _ROUND and two != one % _ROUND + 1:
            yield Untrue(*match.span(), f"after {says(one)} on a clock comes {says(one % _ROUND + 1)}")
    if "half past" in sentence:
        yield from _halves(sentence, [number(match["one"]) for match in between])
    for match in _AT.finditer(sentence) if "clock" in sentence and not _LONG.search(sentence) else ():
        if number(match["one"]) != number(match["hour"]):
            yield Untrue(*match.span(), f"there it is {match['one']} o’clock")
    for match in _FROM.finditer(sentence) if "hour" in sentence and "from" in sentence else ():
        one, two, span = (number(match[part]) for part in ("one", "two", "span"))
        if 0 < one <= _ROUND and 0 < two <= _ROUND and (two - one - span) % _ROUND:
            yield Untrue(*match.span(), f"it is {says((two - one) % _ROUND)} hours")


def _halves(sentence: str, between: list[object]) -> Iterator[Untrue]:
    """A half hour told beside the numbers the short hand is halfway between, or the one it is on its way to."""
    times = [*_HALF_PAST.finditer(sentence)]
    if len(times) != 1 or _ANOTHER_TIME.search(sentence):
        return
    hour, on_the_way = number(times[0]["hour"]), [*_HALFWAY_TO.finditer(sentence)]
    if len(between) == 1 and not on_the_way and between[0] != hour:
        yield Untrue(*times[0].span(), f"halfway from {between[0]} it is half past {between[0]}")
    elif (
        len(on_the_way) == 1
        and not between
        and 0 < hour <= _ROUND
        and number(on_the_way[0]["two"]) != hour % _ROUND + 1
    ):
        yield Untrue(
            *times[0].span(), f"at half past {says(hour)} the short hand is on its way to {says(hour % _ROUND + 1)}"
        )


CLASS = ClaimClass(
    name="hands of a clock",
    reads="The two numbers the short hand is halfway between, and half past which that is; at the 8 it is 8 o'clock; how many hours "
    "there are from one to another.",
    leaves="The long hand; halfway on a number line; times told one before or after another.",
    source="Common practice, no source: twelve numbers round the clock, each an hour of the short hand.",
    cues=frozenset(("halfway", "middle", "clock", "hour", "hours")),
    find=_find,
    numbers=2,
)
