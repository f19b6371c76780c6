"""A book's own page, and its story page by page."""

from __future__ import annotations

from collections.abc import Iterator

from ..covers.taught import coverage_of
from ..model.address import coverage_csv, resolve
from ..model.body import Block, Body, Paragraph
from ..model.book import Book, MathsOnPages
from ..model.document import Document
from ..model.session import Session
from ..model.story import Story
from .body import draw_blocks, draw_runs
from .coverage_part import coverage_part
from .site import Rendered, Site


def draw_book(site: Site, page: Document[Book]) -> Rendered:
    """The page of a book: synopsis, the maths on its pages, its cast, what is taught from it, its rights."""
    source, book_id = page.source, page.fields.book_at(page.path)
    run = site.collection.sessions_of(book_id)
    years, books = page.fields.years, site.collection.books
    html = site.draw_with_words(
        "book.html",
        source,
        page=page,
        book=page.fields,
        run=run,
        homes=site.collection.homes_of(book_id),
        story=site.collection.stories.get(book_id),
        books_before=[books[one] for one in page.fields.after if one in books],
        in_series=site.collection.series_with(book_id),
        synopsis=draw_blocks(page.content.blocks, source),
        facts=_fact_table(page.fields),
        seen_on_pages=_with_pictures(page.fields, site.collection.stories.get(book_id)),
        csv=coverage_csv(source),
        **coverage_part(site, source, coverage_of(run, site.collection.reference), (years.best,), [("", run)], _called),
    )
    return Rendered(source, page.fields.title, page.fields.summary, html, "book")


def _called(page: Document[Session]) -> tuple[str, str]:
    return "session", str(page.fields.number)


def _with_pictures(book: Book, story: Document[Story] | None) -> list[tuple[MathsOnPages, str]]:
    """The maths on each stretch of pages, with the source of its first page's picture where the story is here."""
    pictures: dict[int, str] = {}
    if story is not None:
        for number, section in enumerate(story.content.sections, 1):
            found = Body(section.blocks).pictures
            if found:
                pictures[number] = resolve(found[0].target, story.source)
    return [(seen, pictures.get(seen.pages.first, "")) for seen in book.maths_on_pages]


def _fact_table(book: Book) -> list[tuple[str, list[str]]]:
    """Each fact of the cast with its value for every character, as words; empty where one has none."""
    names = list(dict.fromkeys(fact for character in book.cast for fact in character.facts))
    return [(name, [_said(character.facts.get(name)) for character in book.cast]) for name in names]


def _said(value: bool | int | str | None) -> str:
    if value is None:
        return "–"
    return {True: "yes", False: "no"}[value] if isinstance(value, bool) else str(value)


def spreads_of(page: Document[Story]) -> Iterator[tuple[str, str, str, str]]:
    """The pages of a story in order: anchor, heading, the picture and the words, both as HTML."""
    for section in page.content.sections:
        picture = next((block for block in section.blocks if _is_picture(block)), None)
        words = [block for block in section.blocks if block is not picture]
        yield (
            section.heading.anchor,
            draw_runs(section.heading.runs, page.source),
            draw_runs(picture.runs, page.source) if isinstance(picture, Paragraph) else "",
            draw_blocks(words, page.source),
        )


def _is_picture(block: Block) -> bool:
    return isinstance(block, Paragraph) and [run.kind for run in block.runs] == ["picture"]


def draw_story(site: Site, page: Document[Story]) -> Rendered:
    """A story: each page's picture above its words."""
    source = page.source
    book = site.collection.books[page.fields.book]
    html = site.draw("story.html", source, page=page, story=page.fields, book=book, spreads=list(spreads_of(page)))
    summary = page.fields.summary or f"The story of {book.fields.title}, page by page."
    return Rendered(source, page.fields.title, summary, html, "story")
