"""The form of the files in ``site_data/practice/``: a source, and a row for each year."""

from __future__ import annotations

from typing import Generic, TypeVar

from ..fields import Strict, Text, Year


class PracticeRow(Strict):
    """What one kind of activity practises in a year."""

    year: Year


R = TypeVar("R", bound=PracticeRow)


class PracticeFile(Strict, Generic[R]):
    """A file of ``site_data/practice/``."""

    source: Text
    """What the choice of numbers leans on."""
    years: tuple[R, ...]
