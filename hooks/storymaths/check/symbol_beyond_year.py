"""Signs the year has not met."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.fields import year_name
from ..model.problem import Problem
from ..model.rule import Rule
from ..model.session import Session
from .adult_matters import joins_a_size
from .pupil_numbers import pupil_pages, year_at, youngest

RULE = Rule(
    name="symbol-beyond-year",
    says="Signs are ones the year has met: + − = from Year 1, < > × ÷ from Year 2. A session may bring < > into Year 1.",
    why="A sign is a new word; it needs its own lesson, in its own year.",
    source="Programmes of study, key stages 1 and 2 (DfE, 2013); the page of each year. For ≠: common practice, no source.",
    wrong="year: 1 … 3 × 2 = 6",
    right="year: 1 … 2 + 2 + 2 = 6",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for the first use on a page of each sign that comes later. ≠ may come as soon as = has."""
    reference = collection.reference
    for page in pupil_pages(collection):
        if {"=" if sign == "≠" else sign for _, sign in page.prose.signs} <= reference.symbols_by(youngest(page)):
            continue
        said: set[tuple[str, int]] = set()
        for at, sign in page.prose.signs:
            year = year_at(page, at)
            if (sign, year) in said or joins_a_size(page.prose.text, at):
                continue
            said.add((sign, year))
            chosen = reference.signs_chosen(page.fields) if isinstance(page.fields, Session) else ()
            if ("=" if sign == "≠" else sign) not in reference.symbols_by(year) and not (
                sign in chosen and year == page.fields.year
            ):
                yield RULE.problem(
                    page.place_in_prose(at, sign),
                    f"The sign {sign} is not yet met in {year_name(year)}.",
                    "say it in words, or move it to the bend to an older year.",
                )
