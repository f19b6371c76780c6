"""A chart for other years: other amounts in the same order, pictures worth more or less, another way to show them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from fractions import Fraction
from typing import TYPE_CHECKING, Any

from ...model.activity import Context
from ...model.year import YearLimits
from .rows import MOST, Rows, Show

if TYPE_CHECKING:
    from . import ChartFields

_FIRST_WITH_CHARTS, _FIRST_WITH_BARS = 2, 3
Change = tuple[Mapping[str, Any], list[Fraction], str]
"""Fields that change, the new amounts, and what changed in words."""


def chart_versions(
    fields: ChartFields, rows: Rows, context: Context, year: YearLimits
) -> Iterator[tuple[ChartFields, Context, str]]:
    """Candidates, best first."""
    if year.year == context.year.year:
        yield fields, context, "The same numbers."
    for change, amounts, why in _changes(fields, [row.amount for row in rows.rows], year):
        yield _with(fields, rows, context, change, amounts, why)
    yield fields, context, "The same numbers."


def _changes(fields: ChartFields, amounts: list[Fraction], year: YearLimits) -> Iterator[Change]:
    each = fields.each or 1
    small = _in_order(amounts)
    if year.year < _FIRST_WITH_CHARTS:
        shown: Show = "table" if fields.show == "table" else "pictogram"
        if fields.show == "pictogram":
            yield {"each": None, "show": shown}, [a / each for a in amounts], "The same pictures, each worth 1."
        yield {"each": None, "show": shown}, small, "Smaller numbers in the same order, a picture for each."
        return
    if fields.show == "pictogram":
        if year.year > _FIRST_WITH_BARS:
            for worth in (20, 50, 100):
                yield {"each": worth}, [a / each * worth for a in amounts], f"The same pictures, each worth {worth}."
        worths = (table for table in reversed(year.tables) if table not in (1, each))
        for worth in sorted(worths, key=lambda w: (w % 2, w > 5 and year.year == _FIRST_WITH_CHARTS, w)):
            yield {"each": worth}, [a / each * worth for a in amounts], f"The same pictures, each worth {worth}."
    if year.year >= _FIRST_WITH_BARS and fields.show == "block":
        for factor in (5, 4, 10, 2):
            yield (
                {"show": "bar", "each": None},
                [a * factor for a in amounts],
                f"A bar chart, and {factor} times as many.",
            )
    if year.year < _FIRST_WITH_BARS and fields.show == "bar":
        shown = "block" if max(amounts) <= MOST["block"] else "table"
        yield {"show": shown, "each": None}, amounts, "The same numbers, shown another way."
        yield {"show": "block", "each": None}, small, "Smaller numbers in the same order, in blocks."
    if year.year > _FIRST_WITH_BARS and fields.show in ("bar", "table"):
        for factor in (100, 10, 5):
            yield (
                {"each": fields.each and fields.each * factor},
                [a * factor for a in amounts],
                f"{factor} times as many.",
            )
    yield {"each": None}, small, "Smaller numbers in the same order."


def _in_order(amounts: list[Fraction]) -> list[Fraction]:
    """The smallest whole numbers in the same order; nought stays nought, equals stay equal."""
    levels = sorted(set(amounts) - {Fraction(0)})
    return [Fraction(levels.index(amount) + 1) if amount else Fraction(0) for amount in amounts]


def _with(
    fields: ChartFields, rows: Rows, context: Context, change: Mapping[str, Any], amounts: list[Fraction], why: str
) -> tuple[ChartFields, Context, str]:
    update = dict(change)
    if fields.total is not None:
        update["total"] = sum(amounts, Fraction(0))
    if fields.data is None:
        values = dict(zip(rows.labels, amounts, strict=True))
        characters = tuple(
            replace(character, facts={**character.facts, fields.fact or "": _whole(values[character.name])})
            for character in context.characters
        )
        return fields.model_copy(update=update), replace(context, characters=characters), why
    given = zip(fields.data.items(), amounts, strict=True)
    update["data"] = {label: amount if isinstance(old, Fraction) else old for (label, old), amount in given}
    return fields.model_copy(update=update), context, why


def _whole(amount: Fraction) -> Any:
    """As a fact of the cast holds it; one that is not whole is refused later, where it is read."""
    return amount.numerator if amount.denominator == 1 else str(amount)
