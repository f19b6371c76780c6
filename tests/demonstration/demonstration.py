"""The demonstration in ``content/``, read once."""

from __future__ import annotations

from functools import lru_cache

from project import ROOT
from storymaths.commands.terminal import as_text
from storymaths.model.collection import Collection
from storymaths.reading import read_and_check


@lru_cache(maxsize=1)
def demonstration() -> Collection:
    """The collection that this repository shows itself with. Raises ``AssertionError`` with its problems, if it has any."""
    reading = read_and_check(ROOT)
    assert not reading.problems, as_text(reading.problems)
    assert not reading.warnings, as_text((), reading.warnings)
    assert reading.collection is not None
    return reading.collection
