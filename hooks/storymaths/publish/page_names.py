"""What a browser's tab and search elsewhere know a page by: its title and summary, with its years, ideas and books."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from ..activities.saying import listed
from ..covers.path import path_of
from ..model.any_book import AnyBook
from ..model.book import Book
from ..model.collection import Collection
from ..model.concept import Concept
from ..model.document import Document
from ..model.fields import year_name
from ..model.generated_pages import ClassScreen, Subject
from ..model.page_fields import PageFields
from ..model.series import Series
from ..parse.body import words_of
from ..render.site import Rendered

_ANY_BOOK = "any picture book"
_MOST_IDEAS = 4
"""A search shows some 160 letters: of more ideas, those that most of its sessions have."""


@dataclass(frozen=True, slots=True)
class About:
    """For which years a page is meant, and which it serves also; its ideas and its books, by their names."""

    years: tuple[int, ...] = ()
    also: tuple[int, ...] = ()
    ideas: tuple[str, ...] = ()
    books: tuple[str, ...] = ()

    def title_of(self, page: Rendered) -> str:
        """The page's title with its years, its first idea, and its book, or how many there are."""
        books = [f"{len(self.books)} picture books"] if len(self.books) > 1 else self.books
        more = (_names_of(self.years), *self.ideas[:1], *books)
        return " · ".join((page.title, *(part for part in more if part and part not in page.title)))

    def description_of(self, page: Rendered) -> str:
        """Every year and book with the first ideas, and then the page's summary."""
        years = f"{_names_of(self.years)} (also {_names_of(self.also)})" if self.also else _names_of(self.years)
        facts = ": ".join(filter(None, (years, "; ".join(self.ideas[:_MOST_IDEAS]))))
        with_books = f"With {listed(self.books)}." if self.books else ""
        return " ".join(filter(None, (f"{facts}." if facts else "", with_books, page.summary)))


def about_of(collection: Collection, subject: Document[PageFields] | Subject | None) -> About:
    """What a page is about that an author wrote, or that the build makes of something."""
    match subject:
        case Document(fields=Series() as series):
            sessions = path_of(series, collection).sessions
            books = _titles(collection.books[book] for book in series.books if book in collection.books)
            return About(series.years, (), _ideas(collection, sessions), books)
        case Document(fields=fields):
            own = collection.book_of(subject)
            of_year = own.fields if fields.best_year is None and own else fields
            years = () if of_year.best_year is None else (of_year.best_year,)
            books = (_ANY_BOOK,) if isinstance(fields, AnyBook) else _titles([own] if own else [])
            ideas = _ideas(collection, [subject]) or _ideas(collection, [own] if own else [])
            return About(years, of_year.other_years, ideas, books)
        case ClassScreen(session=session):
            return about_of(collection, session)
        case Concept(id=idea, name=name):
            pages = [page for page in collection.documents if idea in _ideas_named(page)]
            found = {page.fields.best_year for page in pages if page.fields.best_year is not None}
            ids = {page.fields.book_at(page.path) for page in pages}
            return About(
                tuple(sorted(found)), (), (name,), _titles(book for one, book in collection.books.items() if one in ids)
            )
        case _:
            return About()


def _names_of(years: Sequence[int]) -> str:
    return listed([year_name(year) for year in years])


def _titles(books: Iterable[Document[Book]]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(words_of(book.fields.title) for book in books))


def _ideas_named(page: Document[PageFields]) -> Iterable[str]:
    return dict.fromkeys(named.id for named in page.fields.named() if named.of == "concepts")


def _ideas(collection: Collection, pages: Iterable[Document[PageFields]]) -> tuple[str, ...]:
    """The names of those that most of the pages have, first."""
    counts = Counter(idea for page in pages for idea in _ideas_named(page))
    concepts = collection.reference.concepts
    return tuple(concepts[idea].name for idea, _ in counts.most_common() if idea in concepts)
