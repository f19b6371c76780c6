"""The printable catalogue, and the page that lists what there is for other programs."""

from __future__ import annotations

from dataclasses import dataclass

from ..model.address import LICENCE_IN_WORDS, LISTS
from ..model.book import Book
from ..model.document import Document
from ..model.objective import Framework, Objective
from ..model.session import Session
from ..render.site import Rendered, Site
from .open_data.catalogue import kinds_of_books
from .open_data.files import open_files
from .open_data.latest import latest
from .page_kinds.kind import F, InCatalogue, NotListed, PageKind, PrintedRow


@dataclass(frozen=True, slots=True)
class _Entry:
    """A book as the catalogue lists it: its pages as rows, each with its source."""

    book: Document[Book]
    sessions: tuple[Document[Session], ...]
    rows: list[tuple[str, PrintedRow]]

    @property
    def minutes(self) -> int:
        """All its sessions together."""
        return sum(page.fields.minutes for page in self.sessions)


def draw_catalogue(site: Site) -> Rendered:
    """Every book with its sessions, their years, minutes and objectives: for paper, and to read."""
    collection, listed = site.collection, kinds_of_books()
    entries = [
        _Entry(page, collection.sessions_of(book), [row for kind in listed for row in _rows(*kind, book, site)])
        for book, page in collection.books.items()
    ]
    counts = [
        (sum(len(collection.pages_of(b, kind.schema)) for b in collection.books), part.counted) for kind, part in listed
    ]
    html = site.draw(
        "catalogue.html",
        LISTS["catalogue"],
        entries=entries,
        counts=counts,
        imprint=collection.reference.imprint,
        terms=site.terms(LISTS["catalogue"]),
        day=latest(site.collection),
        taught=_taught(site),
    )
    summary = "Every book with its sessions, years, minutes and objectives, to print."
    return Rendered(LISTS["catalogue"], "Catalogue", summary, html, "catalogue", searched=False)


def _rows(kind: PageKind[F], part: InCatalogue[F], book: str, site: Site) -> list[tuple[str, PrintedRow]]:
    if isinstance(part.printed, NotListed):
        return []
    pages = site.collection.pages_of(book, kind.schema)
    return [(page.source, part.printed(site, LISTS["catalogue"], page)) for page in pages]


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
        "open_data.html",
        LISTS["open-data"],
        files=open_files(site),
        imprint=site.collection.reference.imprint,
        terms=site.terms(LISTS["open-data"]),
        licence_at=LICENCE_IN_WORDS,
    )
    return Rendered(LISTS["open-data"], "Open data", "The collection for other programs.", html, "list", searched=False)
