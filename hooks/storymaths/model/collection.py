"""Everything in ``content/`` at once, with the look-ups that rules and pages need."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from functools import cached_property
from operator import is_
from typing import TypeGuard, TypeVar

from .address import book_id
from .any_book import AnyBook
from .book import Book
from .document import Document, Fault, Unread
from .generated_pages import FOR_AUTHORS, ClassScreen, GeneratedPage, generated_pages
from .home import Home
from .page_fields import PageFields
from .reference import Reference
from .series import Series
from .session import Session
from .story import Story

K = TypeVar("K", bound=PageFields)


@dataclass(frozen=True, slots=True, eq=False)
class Part:
    """Pages that say something of each other: those of one book; or one page of no book."""

    documents: tuple[Document[PageFields], ...]
    unread: tuple[Unread, ...]

    def is_same(self, other: Part) -> bool:
        """Whether it holds the very pages of another, as they were read then."""
        ours, theirs = (*self.documents, *self.unread), (*other.documents, *other.unread)
        return len(ours) == len(theirs) and all(map(is_, ours, theirs))


def is_of_kind(page: Document[PageFields], kind: type[K]) -> TypeGuard[Document[K]]:
    """Whether a page is of one kind."""
    return isinstance(page.fields, kind)


@dataclass(frozen=True)
class Collection:
    """All documents, the files beside them, and the reference data they lean on."""

    documents: tuple[Document[PageFields], ...]
    unread: tuple[Unread, ...]
    files: frozenset[str]
    """Every file under ``content/``, as a path from the project root."""
    reference: Reference
    faults: tuple[Fault, ...] = ()
    """Of files that are no pages: drawings, and what should not be there."""

    def of_kind(self, kind: type[K]) -> tuple[Document[K], ...]:
        """The documents of one kind, in path order."""
        return tuple(page for page in self._by_kind.get(kind, ()) if is_of_kind(page, kind))

    @cached_property
    def _by_kind(self) -> Mapping[type[PageFields], list[Document[PageFields]]]:
        kinds: dict[type[PageFields], list[Document[PageFields]]] = defaultdict(list)
        for document in self.documents:
            kinds[type(document.fields)].append(document)
        return kinds

    @cached_property
    def generated(self) -> tuple[GeneratedPage, ...]:
        """Every page the build makes itself."""
        return tuple(generated_pages(self.reference, self.of_kind(Session), self.of_kind(Series)))

    def written_for(self, source: str) -> str:
        """The source of the page that a generated one belongs to, such as a class screen to its session; else its own."""
        about = next((page.about for page in self.generated if page.source == source), None)
        return about.session.source if isinstance(about, ClassScreen) else source

    @property
    def generated_pages(self) -> list[str]:
        """Their sources."""
        return [page.source for page in self.generated]

    @property
    def published_pages(self) -> list[str]:
        """Those of them that readers get."""
        guide = self.reference.site.authors_guide
        return [source for source in self.generated_pages if guide or source not in FOR_AUTHORS]

    @cached_property
    def parts(self) -> Mapping[str, Part]:
        """The collection by its parts: by the id of a book, or the path of a page that is of none."""
        documents: dict[str, list[Document[PageFields]]] = defaultdict(list)
        unread: dict[str, dict[str, Unread]] = defaultdict(dict)
        for page in self.documents:
            named = page.book
            documents[page.path if named is None else named if named in self.book_ids else book_id(page.path)].append(
                page
            )
        in_folder: dict[str, list[Unread]] = defaultdict(list)
        for file in self.unread:
            in_folder[file.folder].append(file)
            unread[book_id(file.path)][file.path] = file
        for name, pages in documents.items():  # a page may stand in the folder of another book
            for folder in {page.folder for page in pages}:
                unread[name] |= {file.path: file for file in in_folder[folder]}
        return {
            name: Part(tuple(documents[name]), tuple(unread[name].values()))
            for name in dict.fromkeys((*documents, *unread))
        }

    def only(self, parts: Iterable[str]) -> Collection:
        """Some parts of it, among the same files."""
        chosen = [self.parts[name] for name in parts]
        if len(chosen) == len(self.parts):
            return self
        documents = sorted((page for part in chosen for page in part.documents), key=lambda page: page.path.split("/"))
        unread = {page.path: page for part in chosen for page in part.unread}
        return replace(self, documents=tuple(documents), unread=tuple(unread.values()), faults=())

    def without_drafts(self) -> Collection:
        """What is published: no draft, and nothing of a book that is a draft itself."""
        drafts = {book for book, page in self.books.items() if page.fields.status == "draft"}
        kept = tuple(page for page in self.documents if page.fields.status == "ready" and page.book not in drafts)
        return replace(self, documents=kept)

    @cached_property
    def series(self) -> Mapping[str, Document[Series]]:
        """Series by id: the name of the file, without an ending."""
        return {page.path.rpartition("/")[2].removesuffix(".md"): page for page in self.of_kind(Series)}

    @cached_property
    def books(self) -> Mapping[str, Document[Book]]:
        """Books by id: the name of the folder a book's record stands in."""
        return {book_id(document.path): document for document in self.of_kind(Book)}

    def book_of(self, page: Document[PageFields]) -> Document[Book] | None:
        """The record of the book a page belongs to; of a book's record itself."""
        return self.books.get(page.book) if page.book is not None else None

    @cached_property
    def book_ids(self) -> frozenset[str]:
        """Ids of all books, those that could not be read included."""
        unread = {book_id(page.path) for page in self.unread if page.path.endswith("/index.md")}
        return frozenset(self.books) | unread

    def pages_of(self, book: str, kind: type[K]) -> tuple[Document[K], ...]:
        """The pages of one kind that belong to a book, in their order."""
        return tuple(page for page in self._by_book.get((book, kind), ()) if is_of_kind(page, kind))

    @cached_property
    def _by_book(self) -> Mapping[tuple[str, type[PageFields]], list[Document[PageFields]]]:
        found: dict[tuple[str, type[PageFields]], list[Document[PageFields]]] = defaultdict(list)
        for page in sorted(self.documents, key=lambda page: page.fields.place):
            if page.book is not None:
                found[page.book, type(page.fields)].append(page)
        return found

    @cached_property
    def _sessions(self) -> Mapping[str, tuple[Document[Session], ...]]:
        found: dict[str, list[Document[Session]]] = defaultdict(list)
        for document in self.of_kind(Session):
            found[self.run_of(document)].append(document)
        return {book: tuple(sorted(run, key=lambda d: d.fields.number)) for book, run in found.items()}

    def run_of(self, page: Document[Session]) -> str:
        """The book whose run a session is in; one that misspells its book is in that of its folder."""
        named = page.fields.book
        return named if named in self.book_ids else book_id(page.path)

    def sessions_of(self, book: str) -> tuple[Document[Session], ...]:
        """The sessions of a book by number."""
        return self._sessions.get(book, ())

    def books_before(self, book: str) -> tuple[str, ...]:
        """The books that a book comes after, and those that they come after; itself only where they run in a circle."""
        found: dict[str, None] = {}
        left = [book]
        while left:
            page = self.books.get(left.pop())
            new = [one for one in (page.fields.after if page else ()) if one not in found]
            found |= dict.fromkeys(new)
            left += new
        return tuple(found)

    def sessions_before(self, book: str) -> tuple[Document[Session], ...]:
        """The sessions of the books it comes after."""
        return tuple(page for one in self.books_before(book) if one != book for page in self.sessions_of(one))

    def signs_to_come(self, session: Session) -> tuple[str, ...]:
        """Signs that a later session of the same book is the first to bring in."""
        met: set[str] = set()
        to_come: dict[str, None] = {}
        for page in self.sessions_of(session.book):
            symbols = page.fields.symbols
            if page.fields.number > session.number:
                to_come |= dict.fromkeys(sign for sign in symbols.new if sign not in met)
            else:
                met |= {*symbols.new, *symbols.again}
        return tuple(to_come)

    def homes_of(self, book: str) -> tuple[Document[Home], ...]:
        """The home activities of a book by number."""
        return self.pages_of(book, Home)

    @property
    def at_home(self) -> tuple[Document[Home] | Document[AnyBook], ...]:
        """What is done at home, with a book of the collection or with any."""
        return (*self.of_kind(Home), *self.of_kind(AnyBook))

    @cached_property
    def stories(self) -> Mapping[str, Document[Story]]:
        """Stories by the id of their book."""
        return {document.fields.book: document for document in self.of_kind(Story)}

    def series_with(self, book: str) -> tuple[Document[Series], ...]:
        """The series a book belongs to."""
        return tuple(series for series in self.of_kind(Series) if book in series.fields.books)
