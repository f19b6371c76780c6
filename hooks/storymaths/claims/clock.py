"""Clock times: two ways of telling one time, times so long after another, and how long there is between two."""

from __future__ import annotations

import re
from collections.abc import Iterator

from ..model.known_facts import KnownFacts
from .amounts import END_OR_AND, N, number
from .claim_class import IS, ClaimClass, Untrue
from .form import Form

_HOUR = r"\d{1,2}"
_PART = r"(?: ?(?:[ap]\.?m\.?(?!\w)|in the (?:morning|afternoon|evening)|at night))?"
TIME = (
    rf"(?<![\w:.£])(?:(?:half past|quarter past|quarter to|\d{{1,2}} (?:minutes? )?(?:past|to)) {_HOUR}(?: o[’']clock)?"
    rf"|{_HOUR} o[’']clock|\d{{1,2}}:\d\d|\d{{1,2}}\.\d\d(?= ?[ap]\.?m\b)|\d{{1,2}}(?= ?[ap]\.?m\b)|midday|noon|midnight){_PART}(?![\w:])"
)
_TOLD = Form(r"(?:(half|quarter|[\w-]+) (?:minutes? )?(past|to) )?(\d+[:.]\d+|[\w-]+)")
SPAN = (
    rf"(?:(?:{N}|an?) hours?(?:,? (?:and )?(?:{N}) minutes?| and a half| and a quarter)?|{N} and a half hours|{N}"
    rf" minutes?|half an hour|(?:a|three) quarters? of an hour)"
)
_SAME = Form(
    rf"(?P<one>{TIME}),? (?:is|means|=|is the same (?:time )?as|is (?:also )?(?:written|shown)(?: as)?|is another way (?:of"
    rf" saying|to say)) (?P<two>{TIME}){END_OR_AND}"
)
_OF_ANOTHER = Form(r"\b(?:after|before|than|past|from|to|and|until|till|between|by) $")
_LATER = Form(
    rf"(?P<span>{SPAN}) (?P<way>after|later than|before|earlier than|past) (?P<one>{TIME}),? (?:is|it is|comes to|makes)"
    rf" (?P<two>{TIME}){END_OR_AND}"
)
_THEN = Form(
    rf"(?P<one>{TIME}),? (?:and |so |then )*(?P<span>{SPAN}) (?P<way>later|earlier)(?: it is|,? it[’']s| is)?"
    rf" (?P<two>{TIME}){END_OR_AND}"
)
_LASTS = Form(
    rf"\b(?:starts?|begins?|leaves?) at (?P<one>{TIME}),? and (?:lasts?|takes?) (?P<span>{SPAN}),? (?:so |and )*(?:it )?"
    rf"(?P<way>)(?:ends?|finishes|finish|stops?|arrives?|gets there) at (?P<two>{TIME}){END_OR_AND}"
)
_BETWEEN = Form(
    rf"\b(?:from|between) (?P<one>{TIME}) (?:to|until|till|and) (?P<two>{TIME}) (?:is|are|takes|lasts|makes|there are)"
    rf" (?P<span>{SPAN}){END_OR_AND}"
)
_DAY, _HALF_DAY = 24 * 60, 12 * 60


def _find(sentence: str, _: KnownFacts) -> Iterator[Untrue]:
    for match in _SAME.finditer(sentence):
        if _OF_ANOTHER.search(sentence, max(0, match.start() - 16), match.start()):
            continue
        one, two = minutes_of(match["one"]), minutes_of(match["two"])
        if one is not None and two is not None and not are_alike(one, two):
            yield Untrue(*match.span(), f"{match['one']} is {_told(one)}")
    for match in (*_LATER.finditer(sentence), *_THEN.finditer(sentence), *_LASTS.finditer(sentence)):
        one, two, span = minutes_of(match["one"]), minutes_of(match["two"]), length_of(match["span"])
        if one is None or two is None:
            continue
        right = (one[0] + (span if match["way"] in ("", "after", "later than", "later", "past") else -span), one[1])
        if not are_alike(right, two):
            yield Untrue(*match.span(), f"it is {_told(right)}")
    for match in _BETWEEN.finditer(sentence):
        one, two, span = minutes_of(match["one"]), minutes_of(match["two"]), length_of(match["span"])
        if one is not None and two is not None and not are_alike((one[0] + span, one[1]), two):
            yield Untrue(*match.span(), f"it is {_lasting(one, two)}")


def minutes_of(text: str) -> tuple[int, bool] | None:
    """Minutes after midnight, and whether it is known of which half of the day."""
    plain = re.sub(_PART.removesuffix("?") + "$", "", text)
    half = text[len(plain) :].replace(".", "").strip()
    if plain in ("midday", "noon", "midnight"):
        return (0 if plain == "midnight" else _HALF_DAY), True
    match = _TOLD.match(plain.replace(" o’clock", "").replace(" o'clock", ""))
    if match is None:
        return None
    part, way, hour = match.groups()
    hours, _, minutes = hour.replace(".", ":").partition(":")
    h, m = int(number(hours)), int(minutes or 0)
    if part:
        told = {"half": 30, "quarter": 15}.get(part) or int(number(part))
        m = told if way == "past" else -told
    if h > 24 or m >= 60:
        return None
    known = bool(half) or h > 12 or (h == 0) or bool(minutes and len(hours) == 2)
    if half:
        at_midnight = half.startswith("at n") and h % 12 == 0
        h = h % 12 + (12 if not at_midnight and half.startswith(("p", "in the a", "in the e", "at n")) else 0)
    return (h * 60 + m) % _DAY, known


def are_alike(one: tuple[int, bool], two: tuple[int, bool]) -> bool:
    """Whether two times may be one: where it is not known of which half of the day, either will do."""
    around = _DAY if one[1] and two[1] else _HALF_DAY
    return (one[0] - two[0]) % around == 0


def length_of(text: str) -> int:
    """The minutes that a match of ``SPAN`` lasts."""
    if text.startswith("half"):
        return 30
    if "of an hour" in text:
        return 45 if text.startswith("three") else 15
    counts = [int(number(each)) for each in re.findall(N, text)]
    if text.startswith(("a hour", "an hour")):
        counts.insert(0, 1)
    more = 30 if "and a half" in text else 15 if "and a quarter" in text else 0
    if "hour" not in text:
        return counts[0]
    return counts[0] * 60 + more + (counts[1] if len(counts) > 1 else 0)


def _told(time: tuple[int, bool]) -> str:
    hours, minutes = divmod(time[0] % _DAY, 60)
    return f"{hours if time[1] else hours % 12 or 12}:{minutes:02}"


def _lasting(one: tuple[int, bool], two: tuple[int, bool]) -> str:
    hours, minutes = divmod((two[0] - one[0]) % (_DAY if one[1] and two[1] else _HALF_DAY), 60)
    parts = [
        f"{count} {unit}{'' if count == 1 else 's'}" for count, unit in ((hours, "hour"), (minutes, "minute")) if count
    ]
    return " and ".join(parts) or "no time at all"


CLASS = ClaimClass(
    name="clock times",
    reads="Two ways of telling one time; a time so many minutes or hours after or before another; how long there is between two.",
    leaves="Times with a dot, and times told without both; where morning or afternoon is not said, either will do.",
    source="Common practice, no source: sixty minutes an hour, twelve hours round the clock.",
    cues=frozenset(
        ("past", "quarter", "noon", "midday", "midnight", "minutes", "hour", "hours", "am", "pm", "clock", ":")
    ),
    find=_find,
    numbers=2,
    verbs=IS | {"ends", "finishes", "stops", "arrives"},
)
