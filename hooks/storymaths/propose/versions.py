"""What the years a session bends to do with each of its activities: the same, other numbers, or nothing."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from ..activities.bending import Version
from ..activities.bent import Bending
from ..activities.block import Block
from ..activities.kind import Unsolvable
from ..activities.on_pages import PageActivity
from ..edits.edit import SetValue, Value
from ..model.bend import Choice, YearBend
from ..model.fields import year_name
from .draft import Draft
from .objectives import practised_of_concepts
from .proposal import Proposal

_OLDER: tuple[Choice, ...] = ("find", "same")
_YOUNGER: tuple[Choice, ...] = ("same", "find")
"""In which order versions are tried: an older year is stretched, a younger does what it can as it is."""
_SHOWN = 3
_LEFT_TO_HER = {
    "numbers": "Say which numbers.",
    "recording": "Say what is drawn, laid or written.",
    "question": "Write the question for that year?",
    "why": "Say why it is done so.",
}
"""The words of the starter, which `check` asks her to replace."""


def propose_versions(draft: Draft) -> Iterator[Proposal]:
    """For each bend, each activity it does not name."""
    yield from _new_bends(draft)
    for year, bend in sorted(draft.fields.bends.items()):
        key = next((key for key in draft.raw["bends"] if key == (year or "Reception")), year)
        for activity in draft.activities:
            fields = activity.worked.fields
            if fields is not None and not any(fields.is_called(name) for name in bend.activities):
                choice, why, _ = _choice(draft, activity, year, bend)
                path = ("bends", key, "activities", fields.id or fields.title)
                yield Proposal("bends", SetValue(path, choice), f"{year_name(year)}, “{fields.title}”: {why}")


def _new_bends(draft: Draft) -> Iterator[Proposal]:
    """A bend to the year below and above, where the book is for it and nothing is said; its words are left to her."""
    also = draft.book.years.also if draft.book and draft.activities else ()
    for year in sorted({*also, *((draft.book.years.best,) if draft.book else ())}):
        if abs(year - draft.fields.year) != 1 or year in draft.fields.bends or "bends" in draft.made_up:
            continue
        made: dict[str, Value] = {**_LEFT_TO_HER}
        chosen = {
            fields.id or fields.title: _choice(draft, activity, year, YearBend())
            for activity in _readable(draft)
            if (fields := activity.worked.fields)
        }
        reason = f"The book is for {year_name(year)} as well; which objectives it has there is yours to say."
        if practised := _find_practised(draft, year, list(chosen.values())):
            framework, code = practised
            made = {"objectives": {framework: [code]}, **made}
            reason = f"The book is for {year_name(year)} as well; its activities practise {code} there."
        made["activities"] = {name: choice for name, (choice, _, _) in chosen.items()}
        yield Proposal("bends", SetValue(("bends", year or "Reception"), made), reason)


def _find_practised(
    draft: Draft, year: int, chosen: Sequence[tuple[Choice, str, Version | None]]
) -> tuple[str, str] | None:
    """The first objective of a year that a version practises, by framework and code."""
    for activity, (_, _, version) in zip(_readable(draft), chosen, strict=True):
        if version is not None:
            worked = replace(activity.worked, fields=version.fields, solution=version.solution)
            for _, key in practised_of_concepts(draft, worked, year):
                return key
    return None


def _readable(draft: Draft) -> list[PageActivity]:
    return [activity for activity in draft.activities if activity.worked.fields]


def _choice(draft: Draft, activity: PageActivity, year: int, bend: YearBend) -> tuple[Choice, str, Version | None]:
    """What the year does with it, why, and the version."""
    worked, reference = activity.worked, draft.reference
    if worked.kind is None or worked.fields is None or worked.context is None or worked.solution is None:
        return "left out", "it cannot be worked out yet.", None
    block = Block(worked.kind, worked.fields, worked.raw, activity.fence.text)
    limits = reference.years[year].held_to(bend.up_to, bend.signs or (), bend.clock)
    bending = Bending(block, worked.context, worked.solution, bend, limits, reference, ())
    refused = ""
    for choice in _OLDER if year > draft.fields.year else _YOUNGER:
        try:
            version = bending.version(choice)
        except Unsolvable as error:
            refused = refused or error.message
            continue
        assert version is not None, "only what is left out has none"
        if version.same:
            return "same", "as the class does it, it fits the year and keeps the promises.", version
        found = "; ".join(answer.says for answer in version.solution.answers[:_SHOWN])
        return "find", f"other numbers fit, with {len(version.solution.answers)} answers: {found}", version
    return "left out", refused, None
