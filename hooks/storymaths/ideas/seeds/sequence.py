"""Counting on in steps the story has, and turns that come round."""

from __future__ import annotations

from collections.abc import Mapping

from ...activities.saying import counted
from ...expression.say import number_word
from ...model.activity import GAP
from ...model.plain import Plain
from ...model.year import YearLimits
from ..candidate import Candidate, Candidates, activity
from ..idea import FromStory
from ..material import Material, NamedFact
from ..wording import number_of
from .seed import Seed

_TERMS, _HIDDEN, _LEAST_START = 7, (4, 5, 7), 5
_WEEK = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")


def _plant(material: Material, limits: YearLimits) -> Candidates:
    for fact in material.named:
        if set(fact.values.values()) <= set(_WEEK) and len(fact.values) == len(set(fact.values.values())):
            yield _turns(fact)
    yield from _in_a_row(material)
    yield from _on_from(material, limits)
    for step, (story, use) in _steps(material).items():
        if step in limits.practice.sequence.steps:
            for back in (False, True):
                whole = [step * place for place in range(1, _TERMS + 1)]
                row = [0, *whole[:-1]][::-1] if back else whole
                terms: list[Plain] = [GAP if at in _HIDDEN else n for at, n in enumerate(row, start=1)]
                way = f"back in {number_of(step)}" if back else f"on in {number_of(step)}"
                ask = f"{story} Count {way}. Which numbers are missing?"
                yield Candidate(activity("sequence", f"Counting {way}", ask, terms=terms), (use,))


def _steps(material: Material) -> Mapping[int, tuple[str, FromStory]]:
    """Sizes the story has, each with a sentence that says what comes in it."""
    found: dict[int, tuple[str, FromStory]] = {}
    for group in material.grouped:
        told = f"{group.holders} of {group.each}"
        found.setdefault(group.each, (f"There are {told}, one after another.", FromStory(told, group.pages)))
    for fact in material.of("count"):
        for one in fact.who:
            each = counted(fact.values[one.id], fact.things)
            if fact.of_body and one.plural and one.plural[:1].islower():
                story = f"Each of the {one.plural} has {each}."
                found.setdefault(fact.values[one.id], (story, FromStory(fact.means)))
    for fact in material.of("money"):
        for one in fact.who:
            if (worth := fact.values[one.id]) in material.coins:
                found.setdefault(worth, (f"Every coin is worth {counted(worth, fact.things)}.", FromStory(fact.means)))
    for price in material.measured:
        if price.unit == "p":
            told = f"{price.number} pence"
            found.setdefault(price.number, (f"Each one costs {told}.", FromStory(told, price.pages)))
    for things in material.counted:
        told = f"{things.number} {things.things}"
        found.setdefault(
            things.number,
            (f"{told}, and {things.number} more, and {things.number} more.", FromStory(told, things.pages)),
        )
    return found


def _on_from(material: Material, limits: YearLimits) -> Candidates:
    """On from a number of the story, in ones or in tens."""
    for step, more in ((10, "ten more come"), (1, "one more comes")):
        told = [one for one in material.counted if one.number >= _LEAST_START and one.number % 10]
        for start in told[:1] if step in limits.practice.sequence.steps else ():
            terms: list[Plain] = [
                GAP if at in _HIDDEN else start.number + step * (at - 1) for at in range(1, _TERMS + 1)
            ]
            name = counted(start.number, start.things)
            ask = f"There are {name}, and {more} each time. Which numbers are missing?"
            lines = activity("sequence", f"On from {name} in {number_of(step)}", ask, terms=terms)
            yield Candidate(lines, (FromStory(name, start.pages),))


def _in_a_row(material: Material) -> Candidates:
    """The first of the cast over and over, with one missing."""
    names = [one.name for one in material.book.cast[:3]]
    for unit in ([0, 1, 1], [0, 1, 2])[: len(names) - 1]:
        row = [names[place] for place in unit] * 3
        pattern: list[Plain] = [*row[:4], GAP, *row[5:8], GAP]
        ask = "They stand in a row, over and over in the same way. Who is missing?"
        title = f"Over and over: {number_word(len(set(unit)))} in the row"
        yield Candidate(activity("sequence", title, ask, pattern=pattern), (FromStory("the cast"),), invented=True)


def _turns(fact: NamedFact) -> Candidate:
    """Whose turn it is, day after day, with nobody on a day that is left out."""
    by_day = {fact.values[one.id]: one.name for one in fact.who}
    first = min(map(_WEEK.index, by_day))
    week = [by_day.get(_WEEK[(first + day) % 7], "nobody") for day in range(7)]
    pattern: list[Plain] = [*week, *week]
    day = _WEEK[first]
    ask = f"Day 1 is a {day}, and then the days go on and round again. Whose turn is it on day 8, day 10 and day 13?"
    lines = activity("sequence", "Whose turn is it?", ask, pattern=pattern, places=[8, 10, 13])
    return Candidate(lines, (FromStory(fact.means),), marks=frozenset({"of days"}))


SEED = Seed("a number the year counts in, or turns that come round by days", _plant)
