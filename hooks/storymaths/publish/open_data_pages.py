"""The printable catalogue, and the page that lists what there is for other programs."""

from __future__ import annotations

from dataclasses import dataclass

from ..model.address import LISTS
from ..model.book import Book
from ..model.document import Document
from ..model.home import Home
from ..model.objective import Framework, Objective
from ..model.session import Session
from ..render.objectives import ShownObjective, shown
from ..render.site import Rendered, Site
from .open_data.files import open_files
from .open_data.latest import latest


@dataclass(frozen=True, slots=True)
class _Entry:
    """A book as the catalogue lists it: each session with its objectives, and what to do at home."""

    book: Document[Book]
    sessions: list[tuple[Document[Session], list[ShownObjective]]]
    homes: tuple[Document[Home], ...]

    @property
    def minutes(self) -> int:
        """All its sessions together."""
        return sum(page.fields.minutes for page, _ in self.sessions)


def draw_catalogue(site: Site) -> Rendered:
    """Every book with its sessions, their years, minutes and objectives: for paper, and to read."""
    reference = site.collection.reference
    entries = [
        _Entry(
            page,
            [(session, shown(session.fields.objectives, reference)) for session in site.collection.sessions_of(book)],
            site.collection.homes_of(book),
        )
        for book, page in site.collection.books.items()
    ]
    html = site.draw(
        "catalogue.html",
        LISTS["catalogue"],
        entries=entries,
        imprint=reference.imprint,
        day=latest(site.collection),
        taught=_taught(site),
    )
    summary = "Every book with its sessions, years, minutes and objectives, to print."
    return Rendered(LISTS["catalogue"], "Catalogue", summary, html, "catalogue", searched=False)


def _taught(site: Site) -> list[tuple[Framework, list[Objective]]]:
    """The objectives some session teaches, by framework."""
    found = [
        (framework, [it for it in framework.objectives if (framework.id, it.code) in site.coverage.taught])
        for framework in site.collection.reference.frameworks.values()
    ]
    return [pair for pair in found if pair[1]]


def draw_open_data(site: Site) -> Rendered:
    """What other programs can have of the collection: each file, what it is, its standard and its licence."""
    html = site.draw(
        "open_data.html", LISTS["open-data"], files=open_files(site), imprint=site.collection.reference.imprint
    )
    return Rendered(LISTS["open-data"], "Open data", "The collection for other programs.", html, "list", searched=False)
