"""What a class begins a session of a series with: questions from earlier sessions of that series, on its screen.

A session that stands in several series begins as the first of them that is for its own year does, by their titles;
where none is for its year, as the first of all: a screen is one for all who open it.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from ...covers.path import path_of
from ...covers.starters import starter_of
from ...model.document import Document
from ...model.series import Series
from ...model.session import Session
from ..site import Site
from .activity_slides import parts_of
from .slides import Slide

_AGO = {1: "the last lesson", 3: "three lessons ago", 7: "seven lessons ago"}


def begin_slides(site: Site, page: Document[Session]) -> Iterator[Slide]:
    """A slide for each question that can be asked with other numbers; none for a session that no series has."""
    every = sorted(site.collection.series_with(page.fields.book), key=lambda one: _rank(one, page))
    if not every:
        return
    sessions = path_of(every[0].fields, site.collection).sessions
    for taken in starter_of(sessions, sessions.index(page), site.activities_of):
        for part in parts_of(taken.worked):
            if part.own:
                of_all = replace(part, years=(page.fields.year, *(year for year in page.fields.bends)))
                yield Slide("activity", f"To begin, from {_AGO[taken.before]}", part=of_all)


def _rank(series: Document[Series], page: Document[Session]) -> tuple[bool, str]:
    return series.fields.year != page.fields.year, series.fields.title
