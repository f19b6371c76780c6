"""Repeating patterns of characters or things: every answer, and what it demands."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from ...model.activity import GAP, Answer, Context, Line, Solution, Task
from ...model.demands import Demands, Operation, amounts, operation
from ...model.year import YearLimits
from ..kind import Unsolvable
from ..tables_used import tables_of
from . import say_pattern as say
from .repeating import Unit, at_place, mistakes_in, repeated, units_of
from .solve import ask_after, draw_track
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

_MOST_ADDED = 6
"""Units are added one by one up to so many."""


_LONGEST_ROW = 8


def _a_repeat_to_a_line(unit: Unit, things: Sequence[str], places: Sequence[int]) -> int:
    """How long the part that repeats is, where the row is drawn in lines; 0 where it stands in one."""
    return len(unit) if places or len(things) > _LONGEST_ROW else 0


def solve_pattern(task: PatternTask, context: Context) -> Solution[PatternAnswer]:
    """Every answer, in the order of the places. Raises ``Unsolvable``."""
    names = _find_names(task, context)
    units = units_of(task.pattern)
    found = list(_find_mistakes(task, units) if isinstance(task, PatternMistakeTask) else _find_answers(task, units))
    values = [value for value, _ in found]
    unit = found[0][1] if found else units[0]
    things = [names.get(thing, GAP) for thing in task.pattern]
    row = ", ".join(things)
    goes_on = isinstance(task, (UnitTask, PatternPlacesTask))
    places = task.places if isinstance(task, PatternPlacesTask) else ()
    return Solution(
        task=Task(
            say.ask_for(task),
            tuple(character for character in context.characters if character.id in task.pattern),
            lines=(Line(tuple(f"{row}, …".split(GAP) if goes_on else row.split(GAP))),),
            figures=(
                draw_track(
                    ["" if thing == GAP else thing for thing in things], _a_repeat_to_a_line(unit, things, places)
                ),
            ),
            asks_after=ask_after(places),
        ),
        answers=tuple(
            Answer(
                say.say_answer(value, names, task.pattern),
                say.explain(value, own, names, _count_of(value, context.year)),
                value,
            )
            for value, own in found
        ),
        demands=_demands(values, context.year),
        steps=1 + (task.pattern.count(GAP) if isinstance(task, (UnitTask, PatternGapsTask)) else 1),
        note=say.explain_all(task, unit, units, values, names),
        likely_error=say.find_error(task, unit, names),
    )


def _find_names(task: PatternTask, context: Context) -> dict[str, str]:
    """Each thing of the pattern and its name."""
    known = {character.id: character.name for character in context.characters}
    for at, thing in enumerate(task.pattern):
        if known and thing != GAP and thing not in known:
            message = f'"{thing[:30]}" is not in the cast.'
            raise Unsolvable(("pattern", at), message, f"use one of {', '.join(known)}.", "activity-fact-missing")
        if len(thing) > 30:
            message = f'"{thing[:30]}…" is too long a name for a thing in a pattern.'
            raise Unsolvable(("pattern", at), message, "use a word or two.")
    return {thing: known.get(thing, thing) for thing in task.pattern if thing != GAP}


def _find_answers(
    task: UnitTask | PatternGapsTask | PatternPlacesTask, units: Sequence[Unit]
) -> Iterator[tuple[PatternAnswer, Unit]]:
    if not units:
        message = "Nothing repeats in the pattern: no unit is seen at least twice with every part shown once."
        raise Unsolvable(("pattern",), message, "show the unit at least twice, or ask for the mistake.")
    unit = units[0]
    match task:
        case PatternPlacesTask():
            yield from ((ThingAt(place, at_place(unit, place), unit), unit) for place in task.places)
        case PatternGapsTask():
            whole = tuple(repeated(unit, len(task.pattern)))
            gaps = tuple(thing for thing, shown in zip(whole, task.pattern, strict=True) if shown == GAP)
            yield FilledPattern(whole, gaps, unit), unit
        case UnitTask():
            yield RepeatingUnit(unit), unit


def _find_mistakes(task: PatternMistakeTask, units: Sequence[Unit]) -> Iterator[tuple[PatternAnswer, Unit]]:
    found = mistakes_in(task.pattern)
    if not found and not units:
        message = "No single change makes the pattern repeat."
        raise Unsolvable(("pattern",), message, "leave one thing wrong and no more, or show the unit more often.")
    yield from ((Mistake(place, task.pattern[place - 1], thing), unit) for place, thing, unit in found)


def _count_of(value: PatternAnswer, year: YearLimits) -> tuple[Operation, ...]:
    """How many whole units come before a place, as the year works it out; nothing where they are counted."""
    if not isinstance(value, ThingAt):
        return ()
    place, length = value.place, len(value.unit)
    units, over = divmod(place, length)
    if length == 1 or place <= length:
        return ()
    rest = [over] * bool(over)
    if year.knows("×"):
        product = operation("×", units, length, units * length)
        return (product, operation("+", units * length, over, place)) if over else (product,)
    if year.knows("+") and units <= _MOST_ADDED:
        return (operation("+", *[length] * units, *rest, place),)
    return ()


def _demands(values: Sequence[PatternAnswer], year: YearLimits) -> Demands:
    counts = [one for value in values for one in _count_of(value, year)]
    places = [value for value in values if isinstance(value, ThingAt)]
    numbers = {number for one in counts for number in one.numbers} | {Fraction(value.place) for value in places}
    for value in places:
        if 1 < len(value.unit) < value.place:
            length = len(value.unit)
            numbers |= {Fraction(n) for n in (length, value.place % length) if n}
    return Demands(
        amounts=amounts(numbers),
        operations=tuple(counts),
        signs=frozenset(sign for one in counts for sign in (one.sign, "=")),
        words=say.find_words(values),
        tables=tables_of(((one.numbers[0], one.numbers[1]) for one in counts if one.sign == "×"), year),
    )
