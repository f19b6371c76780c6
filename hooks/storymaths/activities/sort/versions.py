"""A sorting for other years: a diagram the year knows, fewer rules, numbers within reach."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from typing import TYPE_CHECKING, Any

from ...model.activity import Context
from ...model.fields import RECEPTION
from ...model.year import YearLimits

if TYPE_CHECKING:
    from . import SortFields

_FIRST_WITH_CARROLL = 2
"""The year that first meets Carroll diagrams in the word bank."""


def sort_versions(fields: SortFields, context: Context, year: YearLimits) -> Iterator[tuple[SortFields, Context, str]]:
    """Candidates, best first; each then again with only the numbers the year can read."""
    candidates = list(_guesses(fields, context) if fields.inside else _diagrams(fields, context.year.year, year.year))
    for change, why in candidates:
        yield fields.model_copy(update=change), context, why
    within = tuple(number for number in fields.numbers or () if _reads(number, year))
    if within and within != fields.numbers:
        for change, _ in candidates:
            yield fields.model_copy(update={**change, "numbers": within}), context, "Only numbers the year knows."


def _diagrams(fields: SortFields, own: int, year: int) -> Iterator[tuple[Mapping[str, Any], str]]:
    same: tuple[Mapping[str, Any], str] = ({}, "The same cards and rules.")
    two = len(fields.by) == 2 and fields.diagram != "boxes"
    one_rule = [
        ({"by": (rule,), "diagram": "hoop", "answers": None}, f"Only the {place} rule.")
        for rule, place in zip(fields.by, ("first", "second"), strict=False)
    ]
    venn = ({"diagram": "venn"}, "A Venn diagram in place of the Carroll diagram.")
    carroll = ({"diagram": "carroll"}, "A Carroll diagram in place of the Venn diagram.")
    if two and year == RECEPTION:
        yield from one_rule
    elif two and fields.diagram == "carroll" and year < _FIRST_WITH_CARROLL:
        yield venn
    elif two and fields.diagram != "carroll" and year > own and year >= _FIRST_WITH_CARROLL:
        yield carroll
    yield same
    if two:
        yield from one_rule


def _guesses(fields: SortFields, context: Context) -> Iterator[tuple[Mapping[str, Any], str]]:
    yield {}, "The same sorting."
    facts = dict.fromkeys(fact for character in context.characters for fact in character.facts)
    plain = tuple(
        fact
        for fact in facts
        if all(isinstance(character.facts.get(fact), (bool, str)) for character in context.characters)
    )
    if plain:
        yield {"looking_at": plain}, "Only facts without numbers are looked at."


def _reads(number: str, year: YearLimits) -> bool:
    value = Fraction(number.replace("−", "-"))
    whole = value.denominator == 1 or year.decimal_places > 0
    return whole and abs(value) <= year.largest_number and (value >= 0 or year.below_zero)
