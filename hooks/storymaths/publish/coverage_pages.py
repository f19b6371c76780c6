"""Pages about what the collection covers: all of it at a glance, and each year in full."""

from __future__ import annotations

from ..covers.stages import balance_of, stages_of
from ..covers.table import year_table, year_tables
from ..covers.words import words_by_year
from ..model.address import COLLECTION_CSV, LISTS, coverage_page, governors_page
from ..model.fields import year_name
from ..model.series import Series
from ..model.year import YearLimits
from ..render.coverage_part import drawing_tools, with_its_book
from ..render.coverage_words import stages_in_words
from ..render.session_links import SessionLinks
from ..render.site import Rendered, Site


def draw_coverage(site: Site) -> Rendered:
    """The whole collection: each framework by year, what is missing altogether, its words and its stages."""
    source, reference = LISTS["coverage"], site.collection.reference
    balance = balance_of(stages_of(page, reference) for page in site.coverage.sessions)
    frameworks = [
        (framework, [year_table(site.coverage, reference, framework, year) for year in reference.years])
        for framework in reference.frameworks.values()
        if framework.objectives
    ]
    html = site.draw(
        "coverage.html",
        source,
        frameworks=[(framework, [table for table in tables if table.rows]) for framework, tables in frameworks],
        balance=balance,
        stage_sentences=stages_in_words(balance),
        words=words_by_year(site.coverage.sessions, reference),
        series=[(page, governors_page(page.source)) for page in site.collection.of_kind(Series)],
        csv=COLLECTION_CSV,
        governors=LISTS["governors"],
        shelf=LISTS["shelf"],
        **drawing_tools(),
    )
    summary = "What the sessions teach, what they take up again, and what is missing."
    return Rendered(source, "Coverage", summary, html, "coverage", searched=False)


def draw_coverage_year(site: Site, limits: YearLimits) -> Rendered:
    """One year: every objective with its sessions, the gaps with the ideas that may help, the words not met."""
    source, reference = coverage_page(limits.year), site.collection.reference
    tables = year_tables(site.coverage, reference, [limits.year])
    html = site.draw(
        "coverage_year.html",
        source,
        limits=limits,
        tables=tables,
        sessions_in=SessionLinks(source, with_its_book(site)),
        words=next(words for words in words_by_year(site.coverage.sessions, reference) if words.year == limits.year),
        shelf=LISTS["shelf"],
        csv=COLLECTION_CSV,
        **drawing_tools(),
    )
    title = f"Coverage of {year_name(limits.year)}"
    return Rendered(source, title, f"{title}: every objective and its sessions.", html, "coverage", searched=False)
