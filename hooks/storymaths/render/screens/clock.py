"""Clocks whose hands are set, times to match, and days to put in order."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import Any

from ...activities.clock.time import digits, in_words, long
from ...activities.work_out import WorkedOut
from ...model.activity import Answer
from .board import Board, Piece, Place, keyed
from .order import in_a_row
from .pieces import card, card_id, characters_of, matched, one_card

_HANDS = (Piece("hour-hand", "the hour hand", sort="hour"), Piece("minute-hand", "the minute hand", sort="minute"))
_NEAR = (-60, -30, -15, -5, 5, 15, 30, 60)


def boards(worked: WorkedOut) -> Iterable[Board]:
    """A clock for each time to set; one row for a day in order; else lines with a card for each answer."""
    assert worked.solution is not None
    answers, lines = worked.solution.answers, worked.solution.task.lines
    if not answers:
        return
    first = answers[0].data
    if "hour_hand" in first:
        yield from (_hands(answer.data, lines[n]) for n, answer in enumerate(answers))
    elif "order" in first:
        yield _day(answers)
    elif "words" in first:
        right = [answer.data["words"] for answer in answers]
        yield matched([_line(worked, answer) for answer in answers], right, _other_times(answers))
    elif "minutes" in first and "from" in first:
        minutes = [answer.data["minutes"] for answer in answers]
        others = {long(one + step) for one in minutes for step in (5, -5, 30) if one + step > 0}
        yield matched(_spans(worked, answers), [long(one) for one in minutes], sorted(others)[:6])
    else:
        yield from _told(worked, answers)


def _hands(data: Any, says: str) -> Board:
    step = 5 if data["minute_hand"] % 5 == 0 else 1
    places = (*_hours(), *_minutes(step))
    way = {_hour_place(data["hour_hand"]): ["hour-hand"], f"minute-{data['minute_hand']}": ["minute-hand"]}
    return Board("clock", says, _HANDS, places, keyed(places, [[way]]))


def _hour_place(hours: Sequence[int]) -> str:
    return f"hour-{hours[0]}" if len(hours) == 1 else f"hour-{hours[0]}-and-on"


def _hours() -> Iterator[Place]:
    for hour in range(1, 13):
        yield Place(f"hour-{hour}", f"the hour hand at {hour}", 1, takes="hour", turn=hour % 12 * 30)
        after = f"the hour hand between {hour} and {hour % 12 + 1}"
        yield Place(f"hour-{hour}-and-on", after, 1, takes="hour", turn=hour % 12 * 30 + 15)


def _minutes(step: int) -> Iterator[Place]:
    for minute in range(0, 60, step):
        at = f"the minute hand at {minute // 5 or 12}" if minute % 5 == 0 else f"the minute hand at {minute} minutes"
        yield Place(f"minute-{minute}", at, 1, takes="minute", turn=minute * 6)


def _day(answers: Sequence[Answer]) -> Board:
    found = [[_together(event, answer.data["together"]) for event in _firsts(answer.data)] for answer in answers]
    events = [event for group in found[0] for event in group]
    pieces = [card(event) for event in sorted(events)]
    return in_a_row(pieces, [[[card_id(event) for event in group] for group in order] for order in found])


def _firsts(data: Any) -> Iterator[str]:
    seen: set[str] = set()
    for event in data["order"]:
        if event not in seen:
            seen.update(_together(event, data["together"]))
            yield event


def _together(event: str, groups: Sequence[Sequence[str]]) -> list[str]:
    return next((list(group) for group in groups if event in group), [event])


def _line(worked: WorkedOut, answer: Answer) -> str:
    names = {character.id: character.name for character in characters_of(worked)}
    return names.get(answer.data.get("player", ""), f"Clock {answer.data['clock']}")


def _other_times(answers: Sequence[Answer]) -> list[str]:
    minutes = [_minutes_of(answer.data["time"]) for answer in answers]
    near = dict.fromkeys(in_words((one + step) % 1440) for one in minutes for step in (60, 30, -30))
    return [words for words in near if words not in {answer.data["words"] for answer in answers}][:4]


def _minutes_of(time: str) -> int:
    hours, minutes = time.split(":")
    return int(hours) * 60 + int(minutes)


def _spans(worked: WorkedOut, answers: Sequence[Answer]) -> list[str]:
    assert worked.solution is not None
    shows = dict(zip((character.id for character in characters_of(worked)), worked.solution.task.shows, strict=False))
    names = {character.id: f"{character.name}: {shows.get(character.id, '')}" for character in characters_of(worked)}
    told = worked.solution.task.lines
    if len(told) == len(answers):
        return list(told)
    return [
        names.get(answer.data.get("player", ""), f"{answer.data['from']} to {answer.data['to']}") for answer in answers
    ]


def _told(worked: WorkedOut, answers: Sequence[Answer]) -> Iterator[Board]:
    """Times and trips: a card for each answer among times near it."""
    for answer in answers:
        time = next((answer.data[name] for name in ("time", "ends", "began", "leaves") if name in answer.data), None)
        if time is None:
            continue
        near = dict.fromkeys(digits((_minutes_of(str(time)) + step) % 1440) for step in _NEAR)
        cards = [card(one) for one in sorted({str(time), *near})]
        yield one_card(answer.data.get("told", ""), str(time), cards)
