"""A repeating pattern in words: what is asked, an answer, why, how one knows, and the likely error."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from ...model.activity import LikelyError
from ...model.demands import Operation
from ..ordinals import ordinal
from ..saying import capital, listed
from ..sentences import write_calculation
from .repeating import Unit, at_place, repeated
from .tasks import (
    FilledPattern,
    Mistake,
    PatternAnswer,
    PatternGapsTask,
    PatternMistakeTask,
    PatternPlacesTask,
    PatternTask,
    RepeatingUnit,
    ThingAt,
    UnitTask,
)

Names = Mapping[str, str]
"""What each thing of a pattern is called."""


def ask_for(task: PatternTask) -> str:
    """The task."""
    match task:
        case PatternMistakeTask():
            return "One thing in the pattern is out of place. Which? Put it right."
        case PatternPlacesTask():
            places = listed([f"the {ordinal(place)}" for place in task.places])
            return f"The pattern goes on. What comes at {places} place{'s' if len(task.places) > 1 else ''}?"
        case PatternGapsTask():
            return "What is missing from the pattern?"
        case UnitTask():
            return "Which part of the pattern comes over and over?"


def find_words(values: Sequence[PatternAnswer]) -> tuple[str, ...]:
    """The words of the word bank in what is asked, and in the answers and why they are so."""
    places = [value for value in values if isinstance(value, ThingAt) and len(value.unit) > 1]
    first = any(value.place <= len(value.unit) for value in places)
    last = any(value.place > len(value.unit) and value.place % len(value.unit) == 0 for value in places)
    return ("pattern", *(["first"] if first else []), *(["last"] if last else []))


def _name_all(things: Sequence[str], names: Names) -> str:
    return listed([names[thing] for thing in things])


def say_answer(value: PatternAnswer, names: Names, pattern: Sequence[str]) -> str:
    """An answer as a person says it."""
    match value:
        case ThingAt():
            return f"The {ordinal(value.place)} is {names[value.term]}"
        case FilledPattern():
            return f"{capital(_name_all(value.gaps, names))} {'is' if len(value.gaps) == 1 else 'are'} missing"
        case RepeatingUnit():
            return capital(_name_all(value.unit, names))
        case Mistake():
            here = names[pattern[value.place - 1]]
            return f"The {ordinal(value.place)} is {here} and should be {names[str(value.should_be)]}"


def explain(value: PatternAnswer, unit: Unit, names: Names, count: Sequence[Operation]) -> str:
    """Why it is so."""
    shown = _name_all(unit, names)
    match value:
        case ThingAt():
            return f"The part that repeats has {len(unit)} in it. {_explain_place(value.place, len(unit), count)}."
        case FilledPattern():
            return f"The part that repeats is {shown}. It comes over and over."
        case RepeatingUnit():
            return f"After {names[unit[-1]]} it starts again with {names[unit[0]]}."
        case Mistake():
            return f"Then the part that repeats is {shown}."


def _explain_place(place: int, length: int, count: Sequence[Operation]) -> str:
    """How many whole units come before a place, and how far into the next one it is."""
    over, nth = place % length, ordinal(place)
    if length == 1:
        return "Every place is the same"
    if place <= length:
        return f"It is the {nth} of the first part"
    into = f"so the {nth} is the {ordinal(over) if over else 'last'} of the part"
    if not count:
        return f"Count in parts of {length}, {into}"
    return f"{'; '.join(map(write_calculation, count))}, {into}"


def explain_all(
    task: PatternTask, unit: Unit, units: Sequence[Unit], values: Sequence[PatternAnswer], names: Names
) -> str:
    """How one knows that these are all."""
    shown = _name_all(unit, names)
    if isinstance(task, PatternMistakeTask):
        if not values:
            return f"Nothing is out of place: the part that repeats is {shown}."
        return f"With parts of {len(unit)} every other thing was tried in every place; no shorter part comes out."
    length = len(task.pattern)
    other = next((longer for longer in units[1:] if repeated(longer, length) != repeated(unit, length)), None)
    note = f"{capital(shown)} is the shortest part that fits all that is shown."
    return f"{note} A longer one, {_name_all(other, names)}, would fit too." if other else note


def find_error(task: PatternTask, unit: Unit, names: Names) -> LikelyError | None:
    """The likely error for what is asked; None where none is likely to show."""
    match task:
        case PatternPlacesTask():
            return _miscount(task.places[-1], len(task.pattern), unit, names)
        case UnitTask() if len(set(unit)) < len(unit):
            return LikelyError("Names each thing once.", f"{capital(_name_all(list(dict.fromkeys(unit)), names))}.")
        case _:
            return None


def _miscount(place: int, shown: int, unit: Unit, names: Names) -> LikelyError | None:
    for does, wrong in (
        (
            "Starts the part again after the last thing shown.",
            at_place(unit, place - shown if place > shown else place),
        ),
        ("Does not count the first.", at_place(unit, place + 1)),
    ):
        if wrong != at_place(unit, place):
            return LikelyError(does, f"{capital(names[wrong])} at the {ordinal(place)}.")
    return None
