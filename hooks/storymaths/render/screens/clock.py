"""Clocks whose hands are set, times to match, and days to put in order."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from ...activities.clock.tasks import (
    ClockAnswer,
    ClockRead,
    ClockSet,
    ClockTask,
    ComesRound,
    DayOrder,
    End,
    MeasureSpans,
    OrderDay,
    ReadClocks,
    SetClocks,
    Span,
    Start,
    TimeConverted,
    TripFound,
)
from ...activities.clock.time import DAY, digits, in_words, long
from ...activities.worked import Worked
from .board import Board, Piece, Place, keyed
from .order import in_a_row
from .pieces import card, card_id, matched, one_card

_HANDS = (Piece("hour-hand", "the hour hand", sort="hour"), Piece("minute-hand", "the minute hand", sort="minute"))
_NEAR = (-60, -30, -15, -5, 5, 15, 30, 60)
ClockWorked = Worked[ClockTask, ClockAnswer]


def boards(worked: ClockWorked) -> Iterable[Board]:
    """A clock for each time to set; one row for a day in order; else lines with a card for each answer."""
    answers, lines = [answer.value for answer in worked.solution.answers], worked.solution.task.lines
    match worked.fields:
        case SetClocks():
            yield from (_hands(one, str(lines[n])) for n, one in enumerate(answers) if isinstance(one, ClockSet))
        case OrderDay():
            yield _day([one for one in answers if isinstance(one, DayOrder)], list(map(str, lines)))
        case ReadClocks():
            yield from _read([one for one in answers if isinstance(one, ClockRead)], worked)
        case MeasureSpans():
            yield from _lengths([one for one in answers if isinstance(one, Span)], worked)
        case _:
            yield from (_told(one) for one in answers)


def _hands(one: ClockSet, says: str) -> Board:
    places = (*_hours(), *_minutes(5 if one.minute_hand % 5 == 0 else 1))
    hour = f"hour-{one.hour_hand[0]}{'' if len(one.hour_hand) == 1 else '-and-on'}"
    way = {hour: ["hour-hand"], f"minute-{one.minute_hand}": ["minute-hand"]}
    return Board("clock", says, _HANDS, places, keyed(places, [[way]]))


def _hours() -> Iterator[Place]:
    for hour in range(1, 13):
        yield Place(f"hour-{hour}", f"the hour hand at {hour}", 1, takes="hour", turn=hour % 12 * 30)
        after = f"the hour hand between {hour} and {hour % 12 + 1}"
        yield Place(f"hour-{hour}-and-on", after, 1, takes="hour", turn=hour % 12 * 30 + 15)


def _minutes(step: int) -> Iterator[Place]:
    for minute in range(0, 60, step):
        at = f"the minute hand at {minute // 5 or 12}" if minute % 5 == 0 else f"the minute hand at {minute} minutes"
        yield Place(f"minute-{minute}", at, 1, takes="minute", turn=minute * 6)


def _day(answers: Sequence[DayOrder], lines: Sequence[str]) -> Board:
    """Each event's card says when it is, as its line does."""
    found = [list(_places(one)) for one in answers]
    told = {
        event: line.removeprefix(f"{event}: ")
        for event in answers[0].order
        for line in lines
        if line.startswith(f"{event}: ")
    }
    pieces = [replace(card(event), shows=told.get(event, "")) for event in sorted(answers[0].order)]
    return in_a_row(pieces, [[[card_id(event) for event in place] for place in order] for order in found])


def _places(one: DayOrder) -> Iterator[tuple[str, ...]]:
    """The events, those at one time together."""
    for event in one.order:
        place = next((group for group in one.together if event in group), (event,))
        if event == place[0]:
            yield place


def _names(worked: ClockWorked) -> dict[str | None, str]:
    return {character.id: character.name for character in worked.context.characters}


def _read(answers: Sequence[ClockRead], worked: ClockWorked) -> Iterator[Board]:
    names, right = _names(worked), [one.words for one in answers]
    near = dict.fromkeys(in_words((one.time.minutes + step) % DAY) for one in answers for step in (60, 30, -30))
    others = [words for words in near if words not in right][:4]
    return matched([names.get(one.character, f"Clock {one.clock}") for one in answers], right, others)


def _lengths(answers: Sequence[Span], worked: ClockWorked) -> Iterator[Board]:
    others = {long(one.minutes + step) for one in answers for step in (5, -5, 30) if one.minutes + step > 0}
    return matched(_spans(answers, worked), [long(one.minutes) for one in answers], sorted(others)[:3])


def _spans(answers: Sequence[Span], worked: ClockWorked) -> list[str]:
    task = worked.solution.task
    if len(task.lines) == len(answers):
        return [str(line) for line in task.lines]
    shows = zip(worked.context.characters, task.shows, strict=False)
    told: dict[str | None, str] = {character.id: f"{character.name}: {shown}" for character, shown in shows}
    return [told.get(one.character, f"{digits(one.start)} to {digits(one.end)}") for one in answers]


def _told(one: ClockAnswer) -> Board:
    """Times and trips: a card for each answer among times near it."""
    match one:
        case TimeConverted(time, told):
            return _near(time.minutes, told)
        case ComesRound(time) | End(ends=time) | Start(began=time) | TripFound(leaves=time):
            return _near(time.minutes)
        case ClockRead() | ClockSet() | Span() | DayOrder():
            raise AssertionError("these have boards of their own")


def _near(right: int, says: str = "") -> Board:
    cards = sorted({digits(right), *(digits((right + step) % DAY) for step in _NEAR)})
    return one_card(says, digits(right), [card(one) for one in cards])
