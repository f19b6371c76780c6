"""What a page's bend makes of one of its activities: the same, its author's numbers, numbers found, or nothing."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any

from ..model.activity import Context, Solution
from ..model.bend import Choice, YearBend
from ..model.document import Loc
from ..model.effort import GivenUp
from ..model.fields import year_name
from ..model.reference import Reference
from ..model.year import YearLimits
from .bending import Version, candidates, say_given_up, why_not
from .block import Block
from .claims import claim_fault, claims_none
from .fit import misfits, too_early
from .kind import ActivityFields, Unsolvable
from .own_words import in_own_words, stale_number
from .pins import CAST, LARGEST, Pinned, pinned
from .promises import broken_promises
from .saying import capital, listed
from .solving import solve

WRITTEN = "written"
"""What may be said of one activity beside its pins: that in this year it is done aloud, or that it is written."""
_NOT_TO_PIN = frozenset({"kind", "id", "title", "ask", "year", "years", "answers", "at_most", "wished"})


@dataclass(frozen=True, slots=True)
class Bending:
    """An activity on its way to another year. ``at`` is where the bend names it."""

    block: Block
    context: Context
    solution: Solution
    bend: YearBend
    limits: YearLimits
    reference: Reference
    at: Loc

    def version(self, choice: Choice) -> Version | None:
        """As the bend says; None where it is left out. Raises ``Unsolvable`` where it cannot be so."""
        if choice == "left out":
            return None
        written = self.limits.writes if self.bend.written is None else self.bend.written
        if choice == "same":
            return self._recorded(self._same(), written)
        pins = {} if isinstance(choice, str) else dict(choice)
        written = pins.pop(WRITTEN, written)
        if not isinstance(written, bool):
            message = '"written" says whether children write this down.'
            raise Unsolvable((*self.at, WRITTEN), message, "write true or false.", "activity-broken")
        held = self._pinned(pins)
        made = self._found(held, pins) if choice == "find" or LARGEST in pins else self._as_pinned(held, pins)
        # The slip a kind thinks likely may hold numbers and signs that the bend does not have: the class's is enough.
        return self._recorded(replace(made, solution=replace(made.solution, likely_error=None)), written)

    def _recorded(self, version: Version, written: bool) -> Version:
        """The version as one that is written or not. Raises ``Unsolvable`` for one that asks to write and is not."""
        if not written and "write" in version.solution.task.ask.casefold().split():
            message = f"It asks children to write, and in {year_name(self.limits.year)} they write nothing."
            raise Unsolvable(self.at, message, "pin ask: with what they say or show.", "bend-promise-broken")
        return replace(version, written=written)

    def _same(self) -> Version:
        own = Version(self.block.fields, replace(self.context, year=self.limits), self.solution, "", same=True)
        self._hold(own, "pin other numbers, or write left out.")
        return own

    def _pinned(self, pins: Mapping[str, Any]) -> Pinned:
        fields, context = self.block.fields, self.context
        named = self.bend.cast
        if named is not None and CAST not in pins and not isinstance(fields.cast, Mapping):
            here = tuple(character for character in context.characters if character.id in named)
            context = replace(context, characters=here or context.characters)
        return pinned(self.block.kind, fields, context, self.limits, pins, self.block.raw, self.at)

    def _as_pinned(self, held: Pinned, pins: Mapping[str, Any]) -> Version:
        context = replace(held.context, year=held.limits)
        try:
            solution = solve(self.block.kind, held.fields, context)
        except Unsolvable as error:
            raise Unsolvable((*self.at, *error.loc[:1]), error.message, error.fix, error.rule) from None
        self._not_stale(held.fields, solution, pins)
        version = Version(held.fields, context, in_own_words(held.fields, solution), "")
        self._differs(version)
        self._hold(version, "change what is pinned, or what the bend says.")
        return self._counted(version)

    def _not_stale(self, fields: ActivityFields, solution: Solution, pins: Mapping[str, Any]) -> None:
        """Raises ``Unsolvable`` where the class's title or task is kept and names a number that is none here."""
        for name, words in (("title", fields.title), ("ask", fields.ask or "")):
            if name not in pins and (number := stale_number(words, solution)):
                message = f'The {name} is still that of the class, and says "{number}".'
                fix = f"pin {name}: as well, as it is in this year, beside the numbers."
                raise Unsolvable(self.at, message, fix, "bend-promise-broken")

    def _found(self, held: Pinned, pins: Mapping[str, Any]) -> Version:
        try:
            for version in candidates(self.block.kind, held.fields, held.context, held.limits, held.keeps):
                whole = replace(version, solution=in_own_words(version.fields, version.solution))
                if not (whole.is_same(self.block.fields, self.context) or self._why_not(whole, held.limits)):
                    self._not_stale(whole.fields, version.solution, pins)
                    return whole
        except GivenUp:
            raise self._no_version(*say_given_up(self.limits.year)) from None
        year, stated = year_name(self.limits.year), [key for key in self.block.raw if key not in _NOT_TO_PIN]
        reasons = self._reasons(self.block.fields, self.context, self.solution)
        message = f"No other numbers were found for {year}."
        if reasons:
            raise self._no_version(
                f"{message} As it is, {'; '.join(reasons)}.",
                f"pin what it has in {year} ({listed(stated, 'or')}), or write left out.",
            )
        raise self._no_version(f"{message} Those of the class fit.", "write same.")

    def _no_version(self, message: str, fix: str) -> Unsolvable:
        return Unsolvable(self.at, message, fix, "activity-no-version")

    def _why_not(self, version: Version, limits: YearLimits) -> list[str]:
        reasons = why_not(version, limits, self.reference)
        return reasons or broken_promises(version.fields, version.context, version.solution, self.bend, self.reference)

    def _reasons(self, fields: ActivityFields, context: Context, solution: Solution) -> list[str]:
        here = replace(context, year=self.limits)
        return [
            *self._beyond(fields, solution),
            *broken_promises(fields, here, solution, self.bend, self.reference),
        ]

    def _beyond(self, fields: ActivityFields, solution: Solution) -> list[str]:
        early = too_early(fields, self.limits, self.reference)
        return early + misfits(solution.demands, self._year, self.reference)

    @property
    def _year(self) -> YearLimits:
        """The year without the largest number of the bend, which is told as the bend's."""
        own = self.reference.years[self.limits.year]
        return own.held_to(None, self.bend.signs or (), self.bend.clock)

    def _hold(self, version: Version, fix: str) -> None:
        """Raises ``Unsolvable`` for a version beyond its year, or that is not what the bend says."""
        reasons = self._reasons(version.fields, version.context, version.solution)
        if reasons:
            beyond = bool(self._beyond(version.fields, version.solution))
            message = f"{capital('; '.join(reasons))}."
            rule = "activity-beyond-year" if beyond else "bend-promise-broken"
            raise Unsolvable(self.at, f"In {year_name(self.limits.year)}: {message}", fix, rule)

    def _differs(self, version: Version) -> None:
        if version.is_same(self.block.fields, self.context):
            message = f"What is pinned for {year_name(self.limits.year)} is what the class has."
            raise Unsolvable(self.at, message, "write same, or pin other numbers.", "version-same-numbers")

    def _counted(self, version: Version) -> Version:
        """The version, if it has answers and they are those its author claims. Raises ``Unsolvable``."""
        fields, solution = version.fields, version.solution
        if fault := claim_fault(self.block.kind, fields, solution):
            raise Unsolvable((*self.at, "answers"), *fault, "activity-claim-wrong")
        if not solution.answers and not claims_none(fields):
            message = f"With what is pinned there is no answer. {solution.note}".rstrip()
            raise Unsolvable(
                self.at, message, "pin other numbers, or answers: 0 if that is the point.", "activity-no-answer"
            )
        if len(solution.answers) > fields.at_most:
            message = f"With what is pinned there are {len(solution.answers)} answers, and at_most is {fields.at_most}."
            raise Unsolvable(self.at, message, "pin less to find, or a larger at_most.", "activity-too-many-answers")
        return version


def _already_there(year: int, at: Loc) -> Unsolvable:
    """For an activity that says in its own lines that it is for that year: what is pinned would be shown nowhere."""
    message = f"The activity is for {year_name(year)} by its own lines, so that what is pinned here is never shown."
    return Unsolvable(at, message, "take the line year: out of the activity, or write same.", "bend-activity-unknown")


def bend_versions(
    block: Block, context: Context, solution: Solution, bends: Mapping[int, YearBend], reference: Reference
) -> tuple[dict[int, Version], list[Unsolvable]]:
    """The versions of the years whose bend names the activity, and why others cannot be; places are of the page."""
    versions: dict[int, Version] = {}
    refused: list[Unsolvable] = []
    for year, bend in sorted(bends.items()):
        limits = reference.years[year].held_to(bend.up_to, bend.signs or (), bend.clock)
        for name, choice in bend.activities.items():
            if not block.fields.is_called(name):
                continue
            at: Loc = ("bends", year or "Reception", "activities", name)
            try:
                made = Bending(block, context, solution, bend, limits, reference, at).version(choice)
            except Unsolvable as error:
                refused.append(error.with_traceback(None))  # it is kept, and need not keep all it came from
                continue
            if made is not None and year == context.year.year and not made.same:
                refused.append(_already_there(year, at))
            elif made is not None:
                versions.setdefault(year, made)
    return versions, refused
