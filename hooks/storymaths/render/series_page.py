"""A series: its books in order, the path through them, and what they need, say, ask for and cover between them."""

from __future__ import annotations

from ..covers.needs import cares_of, needs_of
from ..covers.path import SeriesPath, path_of
from ..covers.taught import coverage_of
from ..model.address import coverage_csv, governors_page, record_csv
from ..model.document import Document
from ..model.material import PRINTED
from ..model.series import Series
from .activity import body_with_activities
from .coverage_part import coverage_part, with_its_book
from .coverage_words import hours_in_words
from .site import Rendered, Site
from .weeks_plan import draw_plan_of_weeks


def draw_series(site: Site, page: Document[Series]) -> Rendered:
    """The page of a series."""
    series, source, reference = page.fields, page.source, site.collection.reference
    path = path_of(series, site.collection)
    children = reference.limits.class_size
    columns = [(f"Book {n}", run.sessions) for n, run in enumerate(path.runs, 1)]
    html = site.draw(
        "series.html",
        source,
        page=page,
        series=series,
        path=path,
        children=children,
        needs=needs_of(path, reference, children),
        printed=PRINTED,
        cares=cares_of(path.sessions, reference),
        body=body_with_activities(site, page, source, level=3),
        plan_address=_as_a_plan(path),
        governors=governors_page(source),
        csv=coverage_csv(source),
        record=record_csv(source),
        hours=hours_in_words,
        weeks=draw_plan_of_weeks(site, page, source),
        **coverage_part(
            site, source, coverage_of(path.sessions, reference), series.years, columns, with_its_book(site)
        ),
    )
    return Rendered(source, series.title, series.summary, html, "series")


def _as_a_plan(path: SeriesPath) -> str:
    """The sessions as the address of a plan gives them: without the folder all books share, and without an ending."""
    names = (page.source.removesuffix(".md").removeprefix("books/") for page in path.sessions)
    return ",".join(names)
