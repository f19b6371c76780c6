"""A kind of page the program does not have: a poem of a book, said together, with the concepts it plays with."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Annotated, Literal

from markupsafe import Markup
from pydantic import Field
from storymaths.model.document import Document
from storymaths.model.fields import Count, Id, PageRange, Pages, Text, Year, year_name
from storymaths.model.page_fields import Named, OfBook, names_in
from storymaths.model.prose import Loc
from storymaths.parse.body import words_of
from storymaths.publish.linked_data.node import At, Node, work
from storymaths.publish.page_kinds.kind import (
    NOT_LISTED,
    FeedEntry,
    InCatalogue,
    InFinder,
    InLinkedData,
    Names,
    NotListed,
    OnIdeaPages,
    Packed,
    PageKind,
    PrintedRow,
    Record,
    Section,
    Starter,
)
from storymaths.publish.page_kinds.records import url_in_catalogue
from storymaths.render.inline import inline
from storymaths.render.site import Rendered, Site

FOLDER = Path(__file__).parent


class Poem(OfBook):
    """A poem. The body is its verses."""

    kind: Literal["poem"]
    summary: Text
    by: Text
    number: Count
    year: Year
    pages: PageRange
    concepts: Annotated[tuple[Id, ...], Field(min_length=1)]

    @property
    def best_year(self) -> int:
        """The year it is for."""
        return self.year

    @property
    def other_years(self) -> tuple[int, ...]:
        """None."""
        return ()

    @property
    def place(self) -> int:
        """Its number."""
        return self.number

    def named(self) -> Iterator[Named]:
        """The concepts it plays with."""
        yield from names_in("concepts", ("concepts",), self.concepts)

    def pages_named(self) -> Iterator[tuple[Loc, Pages]]:
        """Where in the book it belongs."""
        yield ("pages",), self.pages


def draw_poem(site: Site, page: Document[Poem]) -> Rendered:
    """The page of a poem."""
    poem = page.fields
    html = Markup("<h1>{}</h1><p>by {}</p><p>{}</p>").format(poem.title, poem.by, inline(page.body, page.source))
    return Rendered(page.source, poem.title, poem.summary, html, "poem")


def in_feed(site: Site, page: Document[Poem]) -> FeedEntry | NotListed:
    """A poem, where it has a date."""
    poem = page.fields
    if poem.updated is None:
        return NOT_LISTED
    return FeedEntry(words_of(poem.title), words_of(poem.summary), poem.published, poem.updated, [year_name(poem.year)])


def record(site: Site, page: Document[Poem]) -> Record:
    """A poem in the catalogue."""
    poem = page.fields
    return {
        "title": words_of(poem.title),
        "url": url_in_catalogue(site, page.source),
        "summary": words_of(poem.summary),
        "year": year_name(poem.year),
        "concepts": list(poem.concepts),
    }


def printed(site: Site, here: str, page: Document[Poem]) -> PrintedRow:
    """A poem in the catalogue on paper."""
    links = site.fill("concept_links.html", here, concepts=page.fields.concepts)
    return PrintedRow(f"A poem: {page.fields.title}", page.fields.year, None, links)


def titles(site: Site, here: str, about: object, pages: Sequence[Document[Poem]]) -> Markup:
    """Poems as a list of their titles."""
    to = site.tools(here)["to"]
    links = [Markup('<li><a href="{}">{}</a></li>').format(to(page.source), page.fields.title) for page in pages]
    return Markup("<ul>{}</ul>").format(Markup().join(links)) if links else Markup()


def describe(page: Document[Poem], site: Site, at: At) -> Node:
    """A poem in schema.org's words."""
    return work("CreativeWork", page.source, page.fields.title, page.fields.summary, at)


POEM = PageKind(
    schema=Poem,
    names=Names("poem", "poems"),
    draw=draw_poem,
    finder=InFinder(
        letter="p",
        verb="plays with",
        card="text-card",
        of_book="from",
        themes=lambda poem: (),
        searched=lambda poem: [poem.by],
    ),
    plan=NOT_LISTED,
    feed=in_feed,
    catalogue=InCatalogue(
        list="poems",
        says="Its poems.",
        definition=FOLDER / "catalogue.json",
        record=record,
        printed=printed,
        counted="poems",
    ),
    idea_pages=OnIdeaPages(
        teaches=True,
        concept=Section(anchor="poems", heading="Poems", entries=titles),
        theme=NOT_LISTED,
        year=Section(anchor="poems", heading="Poems", entries=titles),
    ),
    front=Section(anchor="poems", heading="Poems to say together", entries=titles),
    linked_data=InLinkedData(type="CreativeWork", lists=("catalogue",), describe=describe),
    pack=Packed.WITH_ITS_BOOK,
    example=FOLDER / "example.md",
    starter=Starter(text=FOLDER / "starter.md", path="books/$book/poem-$number.md", for_book=True),
)
