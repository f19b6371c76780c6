"""Repeating patterns of characters or things: the unit, the gaps, what comes at a place, the mistake."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING

from ...model.activity import Answer, Context, LikelyError, Solution, Task
from ..kind import Unsolvable
from ..met import demands_met
from ..ordinals import ordinal
from ..saying import capital, listed
from ..tables_used import tables_of
from .repeating import GAP, at_place, mistakes_in, repeated, units_of
from .told import track

if TYPE_CHECKING:
    from . import SequenceFields

_WORDS = ("pattern", "next", "first", "second", "last")
Unit = tuple[str, ...]


def pattern_solved(fields: SequenceFields, context: Context) -> Solution:
    """The solution for a ``pattern``. Raises ``Unsolvable``."""
    for name in ("said", "step", "rule"):
        if name in fields.model_fields_set:
            message = f'"{name}" has no part in a pattern of things.'
            raise Unsolvable((name,), message, "leave it out, or write terms.", "activity-broken")
    names = _names(fields, context)
    units = units_of(fields.pattern)
    if fields.mistake:
        answers, unit = _mistakes(fields, names, units)
    else:
        if not units:
            message = "Nothing repeats in the pattern: no unit is seen at least twice with every part shown once."
            raise Unsolvable(("pattern",), message, "show the unit at least twice, or ask for the mistake.")
        unit = units[0]
        answers = _answers(fields, names, unit, context)
    return _solution(fields, context, names, unit, answers, units)


def _names(fields: SequenceFields, context: Context) -> Mapping[str, str]:
    """Each thing of the pattern and its name."""
    known = {character.id: character.name for character in context.characters}
    for at, thing in enumerate(fields.pattern):
        if known and thing != GAP and thing not in known:
            message = f'"{thing[:30]}" is not in the cast.'
            raise Unsolvable(("pattern", at), message, f"use one of {', '.join(known)}.", "activity-fact-missing")
        if len(thing) > 30:
            message = f'"{thing[:30]}…" is too long a name for a thing in a pattern.'
            raise Unsolvable(("pattern", at), message, "use a word or two.")
    return {thing: known.get(thing, thing) for thing in fields.pattern if thing != GAP}


def _answers(fields: SequenceFields, names: Mapping[str, str], unit: Unit, context: Context) -> list[Answer]:
    named = [names[thing] for thing in unit]
    over = f"The unit is {listed(named)}."
    if fields.places:
        return [
            Answer(
                f"The {ordinal(place)} is {names[at_place(unit, place)]}",
                f"{over} {_counted(len(unit), place, context)}.",
                {"place": place, "term": at_place(unit, place), "unit": list(unit)},
            )
            for place in fields.places
        ]
    if GAP in fields.pattern:
        whole = repeated(unit, len(fields.pattern))
        gaps = [whole[at] for at, thing in enumerate(fields.pattern) if thing == GAP]
        says = f"{capital(listed([names[thing] for thing in gaps]))} {'is' if len(gaps) == 1 else 'are'} missing"
        return [Answer(says, f"{over} It comes over and over.", {"terms": whole, "gaps": gaps, "unit": list(unit)})]
    worked = f"After {named[-1]} it starts again with {named[0]}."
    return [Answer(capital(listed(named)), worked, {"unit": list(unit)})]


def _counted(length: int, place: int, context: Context) -> str:
    """How many whole units come before a place, and how far into the next one it is."""
    units, over = divmod(place, length)
    nth = ordinal(place)
    if length == 1:
        return "Every place is the same"
    into = f"so the {nth} is the {ordinal(over)} of a unit" if over else f"so the {nth} is the last of a unit"
    if units == 0:
        return f"It is in the first unit, as the {nth}"
    if context.year.year == 0 or (context.year.year == 1 and units > 6):
        return f"Count in units of {length}, {into}"
    if context.year.year == 1:
        return f"{' + '.join([str(length)] * units + [str(over)] * bool(over))} = {place}, {into}"
    full = units * length
    rest = f"; {full:,} + {over} = {place:,}" if over else ""
    return f"{units:,} × {length} = {full:,}{rest}, {into}"


def _mistakes(fields: SequenceFields, names: Mapping[str, str], units: Sequence[Unit]) -> tuple[list[Answer], Unit]:
    found = mistakes_in(fields.pattern)
    if not found and not units:
        message = "No single change makes the pattern repeat."
        raise Unsolvable(("pattern",), message, "leave one thing wrong and no more, or show the unit more often.")
    answers = []
    for place, thing, unit in found:
        here = fields.pattern[place - 1]
        says = f"The {ordinal(place)} is {names[here]} and should be {names[thing]}"
        worked = f"Then the unit is {listed([names[part] for part in unit])}, over and over."
        answers.append(Answer(says, worked, {"place": place, "is": here, "should_be": thing}))
    return answers, found[0][2] if found else units[0]


def _solution(
    fields: SequenceFields,
    context: Context,
    names: Mapping[str, str],
    unit: Unit,
    answers: Sequence[Answer],
    units: Sequence[Unit],
) -> Solution:
    things = [names.get(thing, "___") for thing in fields.pattern]
    row = ", ".join(things)
    goes_on = bool(fields.places) or not (fields.mistake or GAP in fields.pattern)
    task = Task(
        ask=fields.ask or _ask(fields),
        characters=tuple(character for character in context.characters if character.id in fields.pattern),
        lines=(f"{row}, …" if goes_on else row,),
        figures=(track(["" if thing == "___" else thing for thing in things]),),
    )
    products = [(place // len(unit), len(unit)) for place in fields.places] if context.year.year >= 2 else []
    return Solution(
        task=task,
        answers=tuple(answers),
        demands=demands_met(task, answers, _WORDS, tables_of(products, context.year)),
        steps=1 + (1 if fields.places or fields.mistake else fields.pattern.count(GAP)),
        note=_note(fields, names, unit, answers, units),
        likely_error=_slip(fields, names, unit),
    )


def _ask(fields: SequenceFields) -> str:
    if fields.mistake:
        return "One thing in the pattern is out of place. Which? Put it right."
    if fields.places:
        places = listed([f"the {ordinal(place)}" for place in fields.places])
        return f"The pattern goes on. What comes at {places} place{'s' if len(fields.places) > 1 else ''}?"
    if GAP in fields.pattern:
        return "What is missing from the pattern?"
    return "Which part of the pattern comes over and over?"


def _note(
    fields: SequenceFields, names: Mapping[str, str], unit: Unit, answers: Sequence[Answer], units: Sequence[Unit]
) -> str:
    shown = listed([names[thing] for thing in unit])
    if fields.mistake and not answers:
        return f"Nothing is out of place: the unit is {shown}."
    if fields.mistake:
        return f"With units of {len(unit)} every other thing was tried in every place; no shorter unit comes out."
    length = len(fields.pattern)
    other = next((longer for longer in units[1:] if repeated(longer, length) != repeated(unit, length)), None)
    note = f"{capital(shown)} is the shortest unit that fits all that is shown."
    if other:
        note += f" A longer one, {listed([names[thing] for thing in other])}, would fit too."
    return note


def _slip(fields: SequenceFields, names: Mapping[str, str], unit: Unit) -> LikelyError | None:
    place, shown = (fields.places[-1] if fields.places else 0), len(fields.pattern)
    if place:
        anew = at_place(unit, place - shown) if place > shown else at_place(unit, place)
        for does, wrong in (
            ("Starts a new unit after the last thing shown.", anew),
            ("Does not count the first.", at_place(unit, place + 1)),
        ):
            if wrong != at_place(unit, place):
                return LikelyError(does, f"{capital(names[wrong])} at the {ordinal(place)}.")
    if not place and not fields.mistake and GAP not in fields.pattern and len(set(unit)) < len(unit):
        things = list(dict.fromkeys(unit))
        return LikelyError("Names each thing once.", f"{capital(listed([names[thing] for thing in things]))}.")
    return None
