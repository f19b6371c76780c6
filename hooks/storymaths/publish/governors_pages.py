"""Pages for governors: what a series or the whole collection teaches and leaves out, in plain words, to be printed."""

from __future__ import annotations

from collections.abc import Sequence

from ..covers.path import path_of
from ..covers.stages import balance_of, stages_of
from ..covers.table import YearTable, year_tables
from ..covers.taught import Coverage, coverage_of
from ..model.address import LISTS, governors_page
from ..model.document import Document
from ..model.series import Series
from ..render.coverage_part import drawing_tools
from ..render.coverage_words import hours_in_words, stages_in_words
from ..render.site import Rendered, Site

_MOST_LISTED = 64
"""Objectives that fit on two sides of A4, told one by one; more are told by year and strand."""


def draw_series_governors(site: Site, page: Document[Series]) -> Rendered:
    """What a series teaches and leaves out."""
    path = path_of(page.fields, site.collection)
    coverage = coverage_of(path.sessions, site.collection.reference)
    return _drawn(
        site,
        governors_page(page.source),
        f"What {page.fields.title} teaches",
        coverage,
        page.fields.years,
        series=page,
        books=[run.book for run in path.runs],
    )


def draw_governors(site: Site) -> Rendered:
    """What the whole collection teaches and leaves out, for the years it has sessions for."""
    years = sorted({page.fields.year for page in site.coverage.sessions})
    books = list(site.collection.books.values())
    title = "What the books here teach"
    return _drawn(site, LISTS["governors"], title, site.coverage, years, series=None, books=books)


def _drawn(site: Site, source: str, title: str, coverage: Coverage, years: Sequence[int], **values: object) -> Rendered:
    reference = site.collection.reference
    minutes = sum(page.fields.minutes for page in coverage.sessions)
    tables = _asked_by_law(year_tables(coverage, reference, years))
    html = site.draw(
        "governors.html",
        source,
        title=title,
        years=years,
        tables=tables,
        in_full=sum(len(table.rows) for table in tables) <= _MOST_LISTED,
        sessions=len(coverage.sessions),
        hours=hours_in_words(minutes),
        stage_sentences=stages_in_words(balance_of(stages_of(page, reference) for page in coverage.sessions), "lesson"),
        **drawing_tools(),
        **values,
    )
    summary = f"{title}, and what it leaves out: for governors, in plain words."
    return Rendered(source, title, summary, html, "governors", searched=False)


def _asked_by_law(tables: Sequence[YearTable]) -> list[YearTable]:
    """Governors ask first what the law asks for; a year without such a framework shows what there is."""
    kept = {table.year for table in tables if table.framework.rests_on_law}
    return [table for table in tables if table.framework.rests_on_law or table.year not in kept]
