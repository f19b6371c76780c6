"""The bends of pages held against their activities: names that mean one, and versions that cannot be."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from ..model.bend import YearBend
from ..model.collection import Collection
from ..model.document import Document
from ..model.fields import year_name
from ..model.page_fields import PageFields
from ..model.problem import Problem
from ..parse.suggestion import did_you_mean
from .kind import ActivityFields
from .on_pages import PageActivities, PageActivity, bends_of
from .rules import BEND_UNCLEAR, NAME_TWICE, OUT_OF_PLACE, every_rule
from .saying import listed

Page = Document[PageFields]


def check_bends(collection: Collection, pages: PageActivities) -> Iterator[Problem]:
    """Every problem of what bends ask of activities, at its place in the page's front matter."""
    rules = every_rule()
    for page in collection.documents:
        activities, bends = pages[page.path], bends_of(page.fields)
        yield from _named_twice(activities)
        if bends is None:
            continue
        for activity in activities:
            yield from _out_of_place(activity, bends)
            for error in activity.worked.refused:
                yield rules[error.rule].problem(page.place(*error.loc), error.message, error.fix)
        yield from _unclear(page, bends, [one.worked.fields for one in activities])
        yield from _strangers(page, bends, collection)


def _named_twice(activities: Sequence[PageActivity]) -> Iterator[Problem]:
    seen: list[ActivityFields] = []
    for activity in activities:
        fields = activity.worked.fields
        if fields is None:
            continue
        name = fields.id
        if name and any(other.is_called(name) for other in seen):
            message = f'Another activity of this page is called "{name}" as well.'
            yield NAME_TWICE.problem(activity.place, message, "give each an id of its own.")
        seen.append(fields)


def _out_of_place(activity: PageActivity, bends: Mapping[int, YearBend]) -> Iterator[Problem]:
    fields = activity.worked.fields
    if fields is None or not fields.years:
        return
    years = listed([year_name(year) for year in sorted(fields.years)])
    unspoken = [year_name(year) for year in sorted(fields.years) if year not in bends]
    message = f'"{fields.title}" says what it is for {years} in its own lines.'
    message += f" This page has no bend to {listed(unspoken, 'or')}." if unspoken else ""
    name = fields.id or fields.title
    fix = f"write it under activities: in the bend to that year, as {name}: same, find or {{what it has}}."
    yield OUT_OF_PLACE.problem(activity.place, message, fix)


def _unclear(
    page: Page, bends: Mapping[int, YearBend], activities: Sequence[ActivityFields | None]
) -> Iterator[Problem]:
    """Names that mean no activity, or two, or one that has been named before."""
    known = [fields for fields in activities if fields is not None]
    names = [fields.id or fields.title for fields in known]
    for year, bend in bends.items():
        before: dict[int, str] = {}
        for name in bend.activities:
            place = page.place("bends", year or "Reception", "activities", name, "[key]")
            meant = [index for index, fields in enumerate(known) if fields.is_called(name)]
            if not meant and None not in activities:
                fix = f"use {listed(names, 'or')}." if names else "take it out, or put the activity into the page."
                message = f'No activity of this page is called "{name}".{did_you_mean(name, names)}'
                yield BEND_UNCLEAR.problem(place, message, fix)
            elif len(meant) > 1:
                message = f'{len(meant)} activities of this page are called "{name}".'
                yield BEND_UNCLEAR.problem(place, message, "give each a line id: with a short name, and use that.")
            elif meant and (first := before.setdefault(meant[0], name)) != name:
                message = f'"{name}" is the activity that is named "{first}" above.'
                yield BEND_UNCLEAR.problem(place, message, "keep one of the two.")


def _strangers(page: Page, bends: Mapping[int, YearBend], collection: Collection) -> Iterator[Problem]:
    """Characters of a bend who are not in the book."""
    book = collection.book_of(page)
    known = [character.id for character in book.fields.cast] if book else []
    for year, bend in bends.items():
        for index, id_ in enumerate(bend.cast or ()):
            if book and id_ not in known:
                place = page.place("bends", year or "Reception", "cast", index)
                message = f'"{id_}" is not in the cast of {book.fields.title}.{did_you_mean(id_, known)}'
                yield BEND_UNCLEAR.problem(place, message, f"use one of {', '.join(known)}.")
