"""The rows of a chart: a label and an amount each, checked against what the chart can show."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

from ...expression.noun import Noun, noun_of
from ...expression.number import read_number
from ...model.activity import Context
from ...model.document import Loc
from ...model.quantity import UNITS
from ..kind import Unsolvable
from ..saying import counted, there_are, written
from .tasks import Amount, ChartTask, Show, name_in

_FINEST_SLICE = 12
"""Slices of finer parts of a pie chart cannot be told by looking."""
MOST = {"tally": 60, "pictogram": 12, "block": 20, "bar": 40, "line": 40}
"""Marks, pictures, blocks or steps of a scale that a row can hold and still be counted."""
_STEPS = (1, 2, 5, 10, 20, 25, 50)


@dataclass(frozen=True, slots=True)
class Row:
    """A label and its amount. ``hidden`` amounts are worked out from the total."""

    label: str
    amount: Fraction
    hidden: bool = False


@dataclass(frozen=True, slots=True)
class Rows:
    """All rows, and how they are spoken of."""

    rows: tuple[Row, ...]
    thing: Noun
    """What is counted, in the plural; empty where the labels say it."""
    owned: bool
    """Whether the labels are characters who have the things."""
    columns: tuple[str, ...] = ()
    """What the amounts of each label are, where it has several; these follow one another."""
    axis: str = ""
    """What the labels count along a line graph."""
    each: int = 1
    """What a picture stands for."""

    def in_column(self, column: str) -> Rows:
        """One column alone, its rows by their labels."""
        place = self.columns.index(column)
        rows = self.rows[place :: len(self.columns)]
        return replace(
            self, rows=tuple(replace(row, label=row.label.removesuffix(f", {column}")) for row in rows), columns=()
        )

    @property
    def along(self) -> tuple[Fraction, ...]:
        """Where each label stands along a line graph: at its number where all are numbers, else one step apart."""
        numbers = [read_number(row.label) for row in self.rows]
        values = [number.value for number in numbers if number is not None]
        rising = len(values) == len(numbers) and values == sorted(set(values))
        return tuple(values) if rising else tuple(map(Fraction, range(len(self.rows))))

    def __getitem__(self, label: str) -> Row:
        return next(row for row in self.rows if row.label == label)

    @property
    def labels(self) -> tuple[str, ...]:
        """The labels, in order."""
        return tuple(row.label for row in self.rows)

    @property
    def total(self) -> Fraction:
        """All amounts together."""
        return sum((row.amount for row in self.rows), Fraction(0))

    @property
    def hidden(self) -> Row | None:
        """The row whose amount is to be worked out, if there is one."""
        return next((row for row in self.rows if row.hidden), None)


def rows_of(task: ChartTask, context: Context) -> Rows:
    """The rows of a data list, or of a fact of the cast. Raises ``Unsolvable``."""
    if task.data is not None:
        filled = _fill(_flat(task), task.total, context, ("data",), task.show == "table")
        rows = Rows(filled, task.noun(task.thing), owned=False, columns=task.columns, axis=task.axis or "")
    else:
        fact = task.fact
        if not fact or not context.characters:
            raise Unsolvable(("data",), "There is nothing to show.", "give data, or a cast and one of its facts.")
        counts = noun_of(context.facts.get(fact))
        named = task.noun(task.thing) if task.thing else counts or task.noun(fact.replace("_", " "))
        filled = _fill(_facts(fact, context), task.total, context, ("fact",), task.show == "table")
        rows = Rows(filled, named, owned=named not in UNITS)
    if not 2 <= len(rows.rows) <= context.caps.characters:
        message = f"{there_are(len(rows.rows), 'rows')}."
        raise Unsolvable(("data",), message, f"give from 2 to {context.caps.characters} rows.")
    return rows


def _flat(task: ChartTask) -> dict[str, Amount]:
    """Every amount by its label, with the name of its column where there are several."""
    amounts: dict[str, Amount] = {}
    for label, value in (task.data or {}).items():
        each = value if isinstance(value, tuple) else (value,)
        if len(each) != max(1, len(task.columns)):
            message = f"{label} has {counted(len(each), 'amounts')}, and there are {len(task.columns) or 'no'} columns."
            raise Unsolvable(("data", label), message, 'write one amount, or one for each of "columns".')
        names = [name_in(label, column) for column in task.columns] or [label]
        amounts |= dict(zip(names, each, strict=True))
    return amounts


def _facts(fact: str, context: Context) -> dict[str, Amount]:
    values: dict[str, Amount] = {}
    for character in context.characters:
        value = character.facts.get(fact)
        if value is None:
            fix = "give the character that fact, or choose another."
            raise Unsolvable(("fact",), f'{character.name} has no fact "{fact}".', fix, "activity-fact-missing")
        if isinstance(value, bool) or not isinstance(value, int):
            message = f"The {fact} of {character.name} is {value!r:.30}, which is not a whole number."
            raise Unsolvable(("fact",), message, "write a whole number.")
        if character.name in values:
            raise Unsolvable(("cast",), f"Two characters are called {character.name}.", "give them names that differ.")
        values[character.name] = Fraction(value)
    return values


def _fill(
    given: Mapping[str, Amount], total: Fraction | None, context: Context, loc: Loc, below_nought: bool
) -> tuple[Row, ...]:
    least = -context.caps.number if below_nought else 0
    for label, value in given.items():
        if isinstance(value, Fraction) and not least <= value <= context.caps.number:
            message = f"The amount of {label} is {written(value, 3)}."
            fix = f"write a number from {written(least)} to {context.caps.number:,}."
            raise Unsolvable((*loc, label), message, fix if below_nought else f"{fix[:-1]}, or show a table.")
    known = sum((value for value in given.values() if isinstance(value, Fraction)), Fraction(0))
    unknown = [label for label, value in given.items() if not isinstance(value, Fraction)]
    if len(unknown) > 1 or (unknown and total is None):
        message = "More than one amount is left open." if len(unknown) > 1 else "An amount is left open."
        raise Unsolvable((*loc, unknown[-1]), message, "leave one open, and give the total.")
    missing = (total - known) if total is not None else Fraction(0)
    if (missing < 0 and not below_nought) or (not unknown and missing):
        message = f"The total is given as {written(total or 0, 3)}, and the amounts come to {written(known, 3)}."
        raise Unsolvable(("total",), message, "put the total right, or leave it out.")
    return tuple(
        Row(label, value) if isinstance(value, Fraction) else Row(label, missing, hidden=True)
        for label, value in given.items()
    )


def check_shown(rows: Rows, show: Show, given: int | None) -> None:
    """Raises ``Unsolvable`` where a chart cannot show an amount, or not so that it can be counted.

    ``given`` is what a picture stands for, or a step of the scale, as the author has it.
    """
    each = given or 1
    if each > 1 and show in ("tally", "block", "table", "pie"):
        fix = "leave each out, or choose a pictogram, a bar chart or a line graph."
        raise Unsolvable(("each",), f"In this chart everything stands for 1, not {each}.", fix)
    if rows.columns and show not in ("bar", "table"):
        raise Unsolvable(("columns",), "This chart shows one amount for each label.", "choose a bar chart or a table.")
    if show == "pie":
        _check_slices(rows)
        return
    for row in rows.rows:
        if row.amount.denominator > 1 and show not in ("bar", "line", "table"):
            message = f"{row.label} has {written(row.amount, 3)}, and this chart counts whole things."
            raise Unsolvable(("show",), message, "choose a bar chart or a table, or write whole numbers.")
        smallest = next(each // parts for parts in (4, 2, 1) if each % parts == 0)
        if show == "pictogram" and row.amount % smallest:
            part = {4: ", halves or quarters of a picture", 2: " or half a picture"}.get(each // smallest, "")
            message = f"{written(row.amount)} cannot be drawn with pictures of {each}{part}."
            raise Unsolvable(("each",), message, "choose another each, or another amount.")
        count = row.amount / each
        if (show not in ("bar", "line") or given) and count > MOST.get(show, count):
            message = f"{row.label} would take {int(count):,} marks in its row, too many to count."
            raise Unsolvable(("show",), message, "let each stand for more, or choose a bar chart.")


def _check_slices(rows: Rows) -> None:
    for row in rows.rows:
        part = row.amount / rows.total if rows.total else Fraction(0)
        if not rows.total or part.denominator > _FINEST_SLICE or (part * 360).denominator > 1:
            message = f"The slice for {row.label} is {written(part)} of the whole, which nobody can read off."
            fix = "choose amounts that are halves, thirds, quarters and so on to twelfths of all."
            raise Unsolvable(("data", row.label), message, fix)


def scale_step(rows: Rows, each: int | None) -> int:
    """The numbers between two marks of a bar chart's scale: as given, else the smallest handy one for ten marks."""
    if each:
        return each
    largest = max(row.amount for row in rows.rows)
    handy = (step * 10**power for power in range(0, 8, 2) for step in _STEPS)
    return next((step for step in handy if step * 10 >= largest), 10_000_000)
