"""What the finder finds: each book with its listed pages, then pages of no book, in one order that every data file keeps."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from ..model.address import html_of
from ..model.book import Book
from ..model.collection import Collection
from ..model.document import Document
from ..model.page_fields import PageFields
from .page_kinds.kind import F, InFinder, Need, NotListed, PageKind
from .page_kinds.table import PAGE_KINDS, Row


@dataclass(frozen=True, slots=True)
class Planned:
    """What a plan adds up of an idea."""

    minutes: int
    group_size: int
    needs: Sequence[Need]


@dataclass(frozen=True, slots=True)
class Idea:
    """A page the finder leads to, and what its kind has the finder say of it."""

    page: Document[PageFields]
    book: str
    """The id of the book it is, or belongs to; empty where it belongs to none."""
    letter: str
    """Of its kind."""
    themes: Sequence[str]
    searched: Sequence[str]
    planned: Planned | None
    """None for what cannot be put into a plan."""

    @property
    def fields(self) -> PageFields:
        """What its author wrote."""
        return self.page.fields

    @property
    def address(self) -> str:
        """Where it is, from the site's root."""
        return html_of(self.page.source)

    @property
    def things(self) -> list[str] | None:
        """The materials it needs, by id; None for what is no thing to do."""
        return [need.item for need in self.planned.needs] if self.planned else None


def kinds_found() -> list[tuple[Row, InFinder[PageFields]]]:
    """The kinds the finder leads to: those of pages with a book, then the books themselves."""
    return sorted(_listed(), key=lambda pair: pair[0].schema is Book)


def ideas(collection: Collection) -> Iterator[Idea]:
    """Every idea: book by book, first the book itself, then its pages kind by kind as in the table; last those of no book."""
    listed = sorted(_listed(), key=lambda pair: pair[0].schema is not Book)
    for book in collection.books:
        for kind, part in listed:
            yield from _of_kind(kind, part, book, collection.pages_of(book, kind.schema))
    for kind, part in listed:
        yield from _of_kind(kind, part, "", [page for page in collection.of_kind(kind.schema) if page.book is None])


def _listed() -> Iterator[tuple[Row, InFinder[PageFields]]]:
    for kind in PAGE_KINDS.values():
        if not isinstance(kind.finder, NotListed):
            yield kind, kind.finder


def _of_kind(kind: PageKind[F], part: InFinder[F], book: str, pages: Iterable[Document[F]]) -> Iterator[Idea]:
    for page in pages:
        fields = page.fields
        planned = None
        if not isinstance(kind.plan, NotListed):
            planned = Planned(kind.plan.minutes(fields), kind.plan.group_size(fields), kind.plan.needs(fields))
        yield Idea(page, book, part.letter, part.themes(fields), part.searched(fields), planned)
