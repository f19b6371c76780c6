"""Books: the record of a picture book, which gathers all that is taught from it."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from markupsafe import Markup

from ....model.book import Book
from ....model.document import Document
from ....model.fields import year_name
from ....parse.body import words_of
from ....render.book_pages import draw_book
from ....render.site import Site
from ..cards import book_cards
from ..kind import (
    NOT_LISTED,
    InCatalogue,
    InFinder,
    InLinkedData,
    Names,
    OnIdeaPages,
    Packed,
    PageKind,
    Record,
    Section,
    Starter,
)
from ..records import dates_in_catalogue, url_in_catalogue
from .linked_data import describe_book

_FOLDER = Path(__file__).parent


def _searched(book: Book) -> list[str]:
    return [*(character.name for character in book.cast), *(seen.see for seen in book.maths_on_pages)]


def _record(site: Site, page: Document[Book]) -> Record:
    book = page.fields
    maybe = {"publisher": book.publisher, "isbn": book.isbn, "rights_note": book.rights_note}
    return {
        "id": book.book_at(page.path),
        "title": words_of(book.title),
        "url": url_in_catalogue(site, page.source),
        "summary": words_of(book.summary),
        "story_by": book.story_by,
        "pictures_by": book.pictures_by,
        "rights": book.rights,
        **{key: words_of(value) for key, value in maybe.items() if value},
        "pages": book.pages,
        "year": year_name(book.years.best),
        "also": [year_name(year) for year in book.years.also],
        "themes": list(book.themes),
        **dates_in_catalogue(book),
    }


def _on_concept(site: Site, here: str, concept: str, pages: Sequence[Document[Book]]) -> Markup:
    seen = [(page, seen) for page in pages for seen in page.fields.maths_on_pages if concept in seen.concepts]
    return site.fill("seen_in_books.html", here, seen=seen)


def _on_theme(site: Site, here: str, theme: str, pages: Sequence[Document[Book]]) -> Markup:
    return book_cards(site, here, theme, pages) or Markup("<p>No book in the collection is about this yet.</p>")


BOOK = PageKind(
    schema=Book,
    names=Names("book", "books"),
    draw=draw_book,
    finder=InFinder(
        letter="b",
        verb="shows",
        card="book-card",
        of_book="",
        themes=lambda book: book.themes,
        searched=_searched,
    ),
    plan=NOT_LISTED,
    feed=NOT_LISTED,
    catalogue=InCatalogue(
        list="books",
        says="Every book, with what is taught from it.",
        definition=_FOLDER / "catalogue.json",
        record=_record,
        printed=NOT_LISTED,
        counted="books",
    ),
    idea_pages=OnIdeaPages(
        teaches=False,
        concept=Section(anchor="in-books", heading="Where books show it", entries=_on_concept),
        theme=Section(anchor="books", heading="Books", entries=_on_theme),
        year=NOT_LISTED,
    ),
    front=Section(anchor="books", heading="The books", entries=book_cards),
    linked_data=InLinkedData(type="CollectionPage", lists=("books", "catalogue"), describe=describe_book),
    pack=Packed.WITH_ITS_BOOK,
    example=_FOLDER / "example.md",
    starter=Starter(text=_FOLDER / "starter.md", path="books/$slug/index.md", for_book=False),
)
