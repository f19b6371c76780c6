"""A sorting for other years: a diagram the year knows, fewer rules, numbers within reach."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from ...model.activity import Context
from ...model.year import YearLimits
from .tasks import BoxesTask, GuessTask, PlaceTask, SortTask, ThreeRingsTask

_SAME = "The same cards and rules."


def versions_of(task: SortTask, context: Context, year: YearLimits) -> Iterator[tuple[SortTask, Context, str]]:
    """Candidates, best first; each then again with only the numbers the year can read."""
    match task:
        case GuessTask():
            yield from ((changed, context, says) for changed, says in _guesses(task, context))
        case BoxesTask():
            yield task, context, _SAME
            yield from ((few, context, says) for few, says in _within_reach(task, year))
        case PlaceTask():
            harder = year.year > context.year.year
            candidates = list(_diagrams(task, year, harder))
            yield from ((changed, context, says) for changed, says in candidates)
            for changed, _ in candidates:
                yield from ((few, context, says) for few, says in _within_reach(changed, year))


def _diagrams(task: PlaceTask, year: YearLimits, harder: bool) -> Iterator[tuple[PlaceTask, str]]:
    if isinstance(task, ThreeRingsTask):
        yield task, _SAME
        for fewer, why in _diagrams(task.with_two_rules(), year, harder):
            yield fewer, "Without the third rule." if why == _SAME else f"Without the third rule. {why}"
        return
    known = year.practice.sort.diagrams
    two = len(task.by) == 2
    one_rule = [
        (task.with_one_rule(rule), f"Only the {place} rule.")
        for rule, place in zip(task.by, ("first", "second"), strict=False)
    ]
    if two and not {"venn", "carroll"} & set(known):
        yield from one_rule
    elif two and task.into == "carroll" and "carroll" not in known:
        yield task.with_diagram("venn"), "A Venn diagram instead of the Carroll diagram."
    elif two and task.into != "carroll" and harder and "carroll" in known:
        yield task.with_diagram("carroll"), "A Carroll diagram instead of the Venn diagram."
    yield task, _SAME
    if two:
        yield from one_rule


def _guesses(task: GuessTask, context: Context) -> Iterator[tuple[GuessTask, str]]:
    yield task, "The same sorting."
    facts = dict.fromkeys(fact for character in context.characters for fact in character.facts)
    plain = tuple(
        fact
        for fact in facts
        if all(isinstance(character.facts.get(fact), (bool, str)) for character in context.characters)
    )
    if plain:
        yield task.with_facts(plain), "Only facts without numbers are looked at."


def _within_reach(task: PlaceTask | BoxesTask, year: YearLimits) -> Iterator[tuple[PlaceTask | BoxesTask, str]]:
    within = tuple(number for number in task.numbers or () if _reads(number, year))
    if within and within != task.numbers:
        yield task.with_numbers(within), "Only numbers the year knows."


def _reads(number: str, year: YearLimits) -> bool:
    value = Fraction(number.replace("−", "-"))
    whole = value.denominator == 1 or year.decimal_places > 0
    return whole and abs(value) <= year.largest_number and (value >= 0 or year.below_zero)
