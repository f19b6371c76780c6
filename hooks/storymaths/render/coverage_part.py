"""What templates need to show coverage: the tables, how sessions are called, and the drawings."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from ..covers.stages import balance_of, stages_of
from ..covers.table import other_tables, year_tables
from ..covers.taught import Coverage, SessionPage
from ..covers.words import words_across
from ..model.address import coverage_page
from . import coverage_picture
from .coverage_words import covered_in_words, empty_strands, stages_in_words
from .session_links import SessionLinks, SessionName
from .site import Site

Columns = Sequence[tuple[str, Sequence[SessionPage]]]
"""Sessions under the label of their book."""


def drawing_tools() -> Mapping[str, Any]:
    """The drawings and sentences, by the names templates know them by."""
    return {
        "mark": coverage_picture.mark,
        "squares": coverage_picture.squares,
        "grid": coverage_picture.grid,
        "covered_in_words": covered_in_words,
        "empty_strands": empty_strands,
        "coverage_source": coverage_page,
    }


def coverage_part(
    site: Site, here: str, coverage: Coverage, years: Sequence[int], columns: Columns, name: SessionName
) -> Mapping[str, Any]:
    """The coverage of a book or a series: tables for its years, what else it covers, its words and its stages.

    ``here`` is the source of the page, ``name`` what it calls a session.
    """
    reference = site.collection.reference
    stages = [stages_of(page, reference) for page in coverage.sessions]
    return {
        **drawing_tools(),
        "coverage": coverage,
        "tables": year_tables(coverage, reference, years),
        "other_tables": other_tables(coverage, reference, years),
        "columns": columns,
        "session_name": name,
        "sessions_in": SessionLinks(here, name),
        "stages": stages,
        "stage_sentences": stages_in_words(balance_of(stages)),
        "across": words_across(coverage.sessions, reference, years),
    }


def with_its_book(site: Site) -> SessionName:
    """Names sessions where their books must be told too: ``The Lift,`` and ``2``."""
    titles = {book: page.fields.title for book, page in site.collection.books.items()}
    return lambda page: (f"{titles.get(page.fields.book, page.fields.book)},", str(page.fields.number))
