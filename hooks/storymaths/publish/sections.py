"""The sections in which pages about ideas, and the front page, lead to written pages: each kind's own, in the table's order."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from ..model.document import Document
from ..model.page_fields import PageFields
from ..render.site import DrawnSection, Site
from .page_kinds.kind import About, F, NotListed, OnIdeaPages, PageKind, Section
from .page_kinds.table import PAGE_KINDS, Row

Fits = Callable[[Document[PageFields]], bool]


def on_front(site: Site, here: str) -> Iterator[DrawnSection]:
    """The sections of the front page."""
    for kind in PAGE_KINDS.values():
        yield from _drawn(kind, kind.front, site, here, None, lambda page: True)


def on_concept(site: Site, here: str, concept: str, teaches: bool) -> Iterator[DrawnSection]:
    """The sections of a concept's page: with kinds that teach it, or with those that only show it."""
    for kind, part in _on_ideas():
        if part.teaches == teaches:
            yield from _drawn(kind, part.concept, site, here, concept, lambda page: concept in page.concepts)


def on_theme(site: Site, here: str, theme: str) -> Iterator[DrawnSection]:
    """The sections of a theme's page."""
    for kind, part in _on_ideas():
        yield from _drawn(kind, part.theme, site, here, theme, lambda page: names_theme(page, theme))


def on_year(site: Site, here: str, year: int) -> Iterator[DrawnSection]:
    """The sections of a year's page: with what is for the year, or serves it as well."""
    for kind, part in _on_ideas():
        yield from _drawn(kind, part.year, site, here, year, lambda page: serves(page, year))


def things_to_do(site: Site) -> Iterator[Document[PageFields]]:
    """The pages of every kind that teaches ideas, kind by kind."""
    for kind, part in _on_ideas():
        if part.teaches:
            yield from site.collection.of_kind(kind.schema)


def names_theme(page: Document[PageFields], theme: str) -> bool:
    """Whether a page has a theme, or prepares a class for it."""
    return any(named.id == theme for named in page.named("themes"))


def serves(page: Document[PageFields], year: int) -> bool:
    """Whether a page is for a year, or serves it as well."""
    return page.fields.best_year == year or year in page.fields.other_years


def _on_ideas() -> list[tuple[Row, OnIdeaPages[PageFields]]]:
    return [(kind, kind.idea_pages) for kind in PAGE_KINDS.values() if not isinstance(kind.idea_pages, NotListed)]


def _drawn(
    kind: PageKind[F], section: Section[F, About] | NotListed, site: Site, here: str, about: About, fits: Fits
) -> Iterator[DrawnSection]:
    if isinstance(section, NotListed):
        return
    pages = [page for page in site.collection.of_kind(kind.schema) if fits(page)]
    html = section.entries(site, here, about, pages)
    if html:
        yield DrawnSection(section.anchor, section.heading, html)
