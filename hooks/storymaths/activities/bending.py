"""An activity for another year: what its author pins, then the first version that fits."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from itertools import chain, islice
from typing import Any

from ..model.activity import Context, Solution
from ..model.effort import GivenUp
from ..model.fields import year_name
from ..model.reference import Reference
from ..model.year import YearLimits
from .fit import misfits, too_early
from .kind import ActivityFields, Kind, Unsolvable
from .pins import Pinned, pinned
from .solving import with_slips_of

_MOST_TRIED = 1500
_PASSED_OVER = 5
_BESIDE_THE_TASK = frozenset({"id", "title", "ask", "answers", "at_most", "wished", "years"})
_CHOSEN = "Chosen by the author for this year."


@dataclass(frozen=True, slots=True)
class Version:
    """An activity as it is for one year."""

    fields: ActivityFields
    context: Context
    solution: Solution
    changed: str
    """What is not as in the activity it comes from, in a sentence; empty where its author pinned all of it."""
    same: bool = False
    """Whether it sets just what the activity sets, so that the activity serves the year as it is."""
    written: bool = True
    """Whether children write it down; what they do not write has no sheet."""

    def is_same(self, fields: ActivityFields, context: Context) -> bool:
        """Whether it sets just what an activity sets, be it in other words."""
        own, other = (
            {name: value for name, value in one if name not in _BESIDE_THE_TASK} for one in (fields, self.fields)
        )
        return own == other and context.characters == self.context.characters


def year_version(
    kind: Kind[Any],
    fields: ActivityFields,
    context: Context,
    solution: Solution,
    year: int,
    pins: Mapping[str, Any],
    reference: Reference,
    raw: Mapping[str, Any] | None = None,
) -> Version:
    """The version for ``year``: the kind's best that fits the year, keeps the pins and has as many answers as wished.

    Where the pins alone make other numbers than those of ``solution``, their author chose them, and they come first.
    ``raw`` is what the fields were read from, if it is at hand. Deterministic. Raises ``Unsolvable``: of the rule
    ``activity-no-version`` when none fits, of another for a pin that means nothing.
    """
    held = pinned(kind, fields, context, reference.years[year], pins, raw)
    found = chain(
        _as_chosen(kind, held, solution), candidates(kind, held.fields, held.context, held.limits, held.keeps)
    )
    try:
        version = next((version for version in found if not why_not(version, held.limits, reference)), None)
    except GivenUp:
        message, fix = say_given_up(year)
        raise Unsolvable(("years", year), message, fix, "activity-no-version") from None
    if version is not None:
        return replace(version, changed=_CHOSEN) if held.is_all_of(version.fields, version.context) else version
    raise Unsolvable(
        ("years", year),
        f"No version for {year_name(year)} was found. {_as_it_stands(kind, held, reference)}",
        "pin less, change the numbers it starts from, or leave this year out.",
        "activity-no-version",
    )


def say_given_up(year: int) -> tuple[str, str]:
    """What is said of a search that was given up, and the fix."""
    message = f"There are so many numbers to try for {year_name(year)} that looking for a version was given up."
    return (
        message,
        "say more of its numbers yourself, ask for fewer years, or take fewer characters or numbers to choose from.",
    )


def _as_chosen(kind: Kind[Any], held: Pinned, solution: Solution) -> Iterator[Version]:
    """The activity with nothing but its pins put in, if they say which numbers to use."""
    if held.field_names or held.facts:
        for version in _solved(kind, held.fields, held.context, held.limits, _CHOSEN):
            if held.facts or version.solution.demands.numbers != solution.demands.numbers:
                yield version


def candidates(
    kind: Kind[Any],
    fields: ActivityFields,
    context: Context,
    limits: YearLimits,
    keeps: Callable[[ActivityFields, Context], bool] = lambda fields, context: True,
) -> Iterator[Version]:
    """Versions that can be worked out, as the kind ranks them.

    Those that do not keep what they should are passed over, and not worked out first: that would take much longer.
    Raises ``GivenUp`` where too many would have to be looked at.
    """
    for changed_fields, changed_context, why in islice(kind.versions(fields, context, limits), _MOST_TRIED):
        context.effort.spend(_PASSED_OVER)
        if keeps(changed_fields, changed_context):
            context.effort.spend(kind.steps_of(changed_fields, changed_context))
            yield from _solved(kind, changed_fields, changed_context, limits, why)


def _solved(
    kind: Kind[Any], fields: ActivityFields, context: Context, limits: YearLimits, why: str
) -> Iterator[Version]:
    here = replace(context, year=limits)
    try:
        yield Version(fields, here, with_slips_of(limits, kind.solve(fields, here)), why)
    except Unsolvable:
        return


def why_not(version: Version, limits: YearLimits, reference: Reference) -> list[str]:
    """Why a version is not the one: beyond the year, or too few or too many answers."""
    reasons = too_early(version.fields, limits, reference) + misfits(version.solution.demands, limits, reference)
    fewest, most = version.fields.wished
    count = len(version.solution.answers)
    if not fewest <= count <= most:
        wish = f"{fewest}" if fewest == most else f"{fewest} to {most}"
        reasons.append(f"it has {count} answers where {wish} are wished for")
    return reasons


def _as_it_stands(kind: Kind[Any], held: Pinned, reference: Reference) -> str:
    try:
        here = replace(held.context, year=held.limits)
        version = Version(held.fields, here, kind.solve(held.fields, here), "")
    except Unsolvable as error:
        return f"With these numbers: {error.message}"
    reasons = why_not(version, held.limits, reference)
    return f"With these numbers, {reasons[0]}." if reasons else ""
