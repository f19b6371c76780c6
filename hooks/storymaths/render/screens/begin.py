"""What a class begins a session of a series with: questions from earlier sessions of that series, on its screen.

A session that stands in several series begins as the first of them that is for its own year does, by their titles;
where none is for its year, as the first of all: a screen is one for all who open it.
"""

from __future__ import annotations

from collections.abc import Iterator

from ...covers.path import path_of
from ...covers.starters import starter_of
from ...model.document import Document
from ...model.series import Series
from ...model.session import Session
from ..site import Site
from .slides import Slide, activity_slide
from .table import boards_of_done

_AGO = {1: "the last lesson", 3: "three lessons ago", 7: "seven lessons ago"}


def begin_slides(site: Site, page: Document[Session]) -> Iterator[Slide]:
    """A slide for each question that can be asked with other numbers; none for a session that no series has."""
    every = sorted(site.collection.series_with(page.fields.book), key=lambda one: _rank(one, page))
    if not every:
        return
    sessions = path_of(every[0].fields, site.collection).sessions
    for taken in starter_of(sessions, sessions.index(page), site.activities_of):
        boards = tuple(boards_of_done(taken.worked))
        yield activity_slide(f"To begin, from {_AGO[taken.before]}", taken.worked.solution, boards)


def _rank(series: Document[Series], page: Document[Session]) -> tuple[bool, str]:
    return series.fields.year != page.fields.year, series.fields.title
