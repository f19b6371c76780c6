"""The demonstration in ``content/``, read once."""

from __future__ import annotations

from functools import lru_cache

from project import ROOT
from storymaths.activities.on_pages import PageActivities, PageActivity
from storymaths.commands.terminal import as_text
from storymaths.model.collection import Collection
from storymaths.model.document import Document
from storymaths.model.page_fields import PageFields
from storymaths.reading import read_and_check


def demonstration() -> Collection:
    """The collection that this repository shows itself with. Raises ``AssertionError`` with its problems, if it has any."""
    return _read()[0]


def activities_on(page: Document[PageFields]) -> tuple[PageActivity, ...]:
    """Those of one of its pages, worked out."""
    return _read()[1][page.path]


@lru_cache(maxsize=1)
def _read() -> tuple[Collection, PageActivities]:
    reading = read_and_check(ROOT)
    assert not reading.problems, as_text(reading.problems)
    assert not reading.warnings, as_text((), reading.warnings)
    assert reading.collection is not None
    return reading.collection, reading.activities
