"""Keys a page of this kind does not have."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.problem import Problem
from ..model.rule import HOUSE_RULE, Rule
from ..parse.suggestion import nearest
from .faults import faults

RULE = Rule(
    name="field-unknown",
    says="Only fields that exist are used.",
    why="A misspelt field would be ignored in silence, and what it says would never reach the page.",
    source=HOUSE_RULE,
    wrong="minuts: 50",
    right="minutes: 50",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each key that means nothing where it stands."""
    for fault in faults(collection, "unknown"):
        first, _, rest = fault.field.partition(" ")
        if rest and first in fault.known:
            yield RULE.problem(fault.place, f'There is no colon after "{first}".', f'write "{first}: {rest}".')
            continue
        if rest.strip():
            yield RULE.problem(
                fault.place,
                f"“{fault.field}” is read as a field, because of the comma before it or the colon after it.",
                'put the whole sentence in quotes: "…".',
            )
            continue
        if fault.field.isdecimal():
            yield RULE.problem(
                fault.place,
                f"{fault.field} is read as a field, because of the comma before it.",
                "put a list within [ ].",
            )
            continue
        near = nearest(fault.field, fault.known)
        yield RULE.problem(
            fault.place,
            f'"{fault.field}" is not a field here.' + (f' Did you mean "{near}"?' if near else ""),
            f'write "{near}", or take the line out.'
            if near
            else f"use one of {', '.join(fault.known)}, or take the line out."
            if fault.known
            else "take the line out.",
        )
