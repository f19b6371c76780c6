"""The record for the class as a file for spreadsheets: a row for each child, without names, and nothing filled in."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from ..covers.path import path_of
from ..covers.taught import SessionPage
from ..model.address import record_csv
from ..model.series import Series
from ..parse.body import words_of
from ..render.site import Site
from .open_data.spreadsheet import as_csv


def class_records(site: Site) -> Mapping[str, str]:
    """Each series' file by its address from the site's root. Whoever fills it in keeps it: nothing comes back here."""
    rows = site.collection.reference.limits.class_size
    files = {}
    for page in site.collection.of_kind(Series):
        sessions = path_of(page.fields, site.collection).sessions
        head = ["Child", *(column for place, one in enumerate(sessions, 1) for column in _columns(place, one))]
        files[record_csv(page.source)] = as_csv([head, *([""] * len(head) for _ in range(rows))])
    return files


def _columns(place: int, page: SessionPage) -> Iterator[str]:
    named = f"Lesson {place}, {words_of(page.fields.title)}"
    yield from (f"{named}. Look for: {words_of(look)}" for look in page.fields.look_for)
    yield f"{named}. At the end: {words_of(page.fields.exit_question.ask)}"
