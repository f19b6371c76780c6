"""How a page bends to other years, as it is shown: what is promised in sentences, and which activities are done."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from ..activities.on_pages import PageActivity, bends_of
from ..activities.saying import listed
from ..model.bend import YearBend
from ..model.document import Document
from ..model.page_fields import PageFields
from ..model.quantity import UNITS_IN_WORDS
from ..model.year import YearLimits
from .site import Site

_UNITS = {unit: f"{word}s" for word, unit in reversed(list(UNITS_IN_WORDS.items())) if f"{word}s" in UNITS_IN_WORDS}
"""Each unit as a sentence names it."""
_CLOCK = {
    60: "O’clock only.",
    30: "O’clock and half past only.",
    15: "Clock times to the quarter hour.",
    5: "Clock times to five minutes.",
    1: "Clock times to the minute.",
}


@dataclass(frozen=True, slots=True)
class NamedActivity:
    """An activity as a bend names it: its title, and where it stands on the page."""

    title: str
    anchor: str
    aloud: bool = False
    """Whether in that year, and not in the whole of its bend, nothing of it is written."""


@dataclass(frozen=True, slots=True)
class ShownBend:
    """A bend with what it promises, and the activities of its page sorted by how they serve its year."""

    year: int
    bend: YearBend
    who_and_how_large: str
    """What is promised of numbers, in sentences; may be empty."""
    how_recorded: str
    """What is promised of writing, in sentences; may be empty."""
    changed: Sequence[NamedActivity]
    same: Sequence[NamedActivity]
    left_out: Sequence[NamedActivity]

    @property
    def in_words_only(self) -> bool:
        """Whether no activity of the page is done in that year, though it has some."""
        return not self.changed and not self.same


def anchor_of(number: int) -> str:
    """Where the activity with a number, from 1, stands on its page."""
    return f"activity-{number}"


def shown_bends(site: Site, page: Document[PageFields]) -> list[ShownBend]:
    """The bends of a page, the youngest year first."""
    activities = site.activities_of(page)
    return [_shown(site, page, activities, year, bend) for year, bend in sorted((bends_of(page.fields) or {}).items())]


def _shown(
    site: Site, page: Document[PageFields], activities: Sequence[PageActivity], year: int, bend: YearBend
) -> ShownBend:
    limits = site.collection.reference.years[year]
    changed, same, left_out = list[NamedActivity](), list[NamedActivity](), list[NamedActivity]()
    for number, activity in enumerate(activities, 1):
        fields, version = activity.worked.fields, activity.worked.versions.get(year)
        if fields is None:
            continue
        aloud = version is not None and not version.written and _writes(bend, limits)
        title = fields.title if version is None else version.fields.title
        named = NamedActivity(title, anchor_of(number), aloud)
        (left_out if version is None else same if version.same else changed).append(named)
    book = site.collection.book_of(page)
    names = {character.id: character.name for character in book.fields.cast} if book else {}
    told = " ".join(_of_numbers(bend, names))
    return ShownBend(year, bend, told, " ".join(_of_recording(bend, limits)), changed, same, left_out)


def _of_numbers(bend: YearBend, names: dict[str, str]) -> Iterator[str]:
    if bend.cast is not None:
        yield f"With {listed([names.get(id_, id_) for id_ in bend.cast])}."
    if bend.up_to is not None:
        yield f"Numbers to {bend.up_to:,}."
    if bend.units:
        yield f"All in {listed([_UNITS.get(unit, unit) for unit in bend.units])}."
    if bend.clock is not None:
        yield _CLOCK[bend.clock]


def _of_recording(bend: YearBend, limits: YearLimits) -> Iterator[str]:
    if bend.signs is not None:
        yield f"The only signs are {listed(bend.signs)}." if bend.signs else "No signs."
    if not _writes(bend, limits):
        yield "Children write nothing."


def _writes(bend: YearBend, limits: YearLimits) -> bool:
    return limits.writes if bend.written is None else bend.written
