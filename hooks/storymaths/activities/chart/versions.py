"""A chart for other years: other amounts in the same order, pictures worth more or less, another way to show them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction

from ...model.activity import Context
from ...model.year import YearLimits
from ..revalue import SAME_NUMBERS
from ..saying import plain
from .rows import MOST, rows_of
from .say import NAMES
from .tasks import ChartTask, DrawChart, Show

Change = tuple[Show, int | None, Sequence[Fraction], str]
"""What shows it, what each picture or mark stands for, the new amounts, and what changed in words."""


def versions_of(task: ChartTask, context: Context, year: YearLimits) -> Iterator[tuple[ChartTask, Context, str]]:
    """Candidates, best first."""
    rows = rows_of(task, context)
    if year.year == context.year.year:
        yield task, context, SAME_NUMBERS
    for show, each, new, why in _changes(task, [row.amount for row in rows.rows], year):
        amounts = dict(zip(rows.labels, new, strict=True))
        changed = task.with_chart(show, each).with_amounts(amounts)
        yield changed, context if task.data is not None else _with_facts(context, task.fact or "", amounts), why
    yield task, context, SAME_NUMBERS


def _changes(task: ChartTask, amounts: Sequence[Fraction], year: YearLimits) -> Iterator[Change]:
    small = _in_order(amounts)
    if not year.draws(NAMES["pictogram"]):
        if task.show == "pictogram":
            yield "pictogram", None, [a / (task.each or 1) for a in amounts], "The same pictures, each worth 1."
        yield "pictogram", None, small, "Smaller numbers in the same order, a picture for each."
        return
    if task.show == "bar" and not year.draws(NAMES["bar"]):
        in_blocks = max(amounts) <= MOST["block"]
        if in_blocks or not isinstance(task, DrawChart):
            yield "block" if in_blocks else "table", None, amounts, "The same numbers, shown another way."
        yield "block", None, small, "Smaller numbers in the same order, in blocks."
    yield from _larger(task, amounts, year)
    yield task.show, None, small, "Smaller numbers in the same order."


def _larger(task: ChartTask, amounts: Sequence[Fraction], year: YearLimits) -> Iterator[Change]:
    """The same pictures worth something else, or bars and tables of so many times as much."""
    practice, each = year.practice.chart, task.each or 1
    match task.show:
        case "pictogram":
            for worth in practice.pictures:
                if worth != each:
                    why = f"The same pictures, each worth {worth}."
                    yield "pictogram", worth, [a / each * worth for a in amounts], why
        case "block" if year.draws(NAMES["bar"]):
            for times in practice.blocks_to_bars:
                yield "bar", None, [a * times for a in amounts], f"A bar chart, and {times} times as many."
        case "bar" | "table":
            for times in practice.times:
                step = task.each and task.each * times
                yield task.show, step, [a * times for a in amounts], f"{times} times as many."


def _in_order(amounts: Sequence[Fraction]) -> list[Fraction]:
    """The smallest whole numbers in the same order; nought stays nought, equals stay equal."""
    levels = sorted(set(amounts) - {Fraction(0)})
    return [Fraction(levels.index(amount) + 1) if amount else Fraction(0) for amount in amounts]


def _with_facts(context: Context, fact: str, amounts: dict[str, Fraction]) -> Context:
    """The cast with other values; one that is not whole is refused later, where it is read."""
    characters = tuple(
        replace(character, facts={**character.facts, fact: plain(amounts[character.name])})
        for character in context.characters
    )
    return replace(context, characters=characters)
