"""The words the finder shows and searches beside its columns: summaries by the shelf, and questions for the memory stick."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from ..model.book import Book
from ..render.inline import inline
from ..render.site import Site
from .ideas import Idea, ideas

SHELF = 25
"""Ideas whose summaries stand in one file; the finder asks for the shelves of the cards it shows."""


def shelves(site: Site) -> Mapping[str, list[str]]:
    """Each shelf's name, ``cards/0`` and so on, and its summaries in the order of its rows."""
    summaries = [_plain(idea.fields.summary or "") for idea in ideas(site.collection)]
    return {
        f"cards/{start // SHELF}": summaries[start : start + SHELF] for start in range(0, len(summaries), SHELF)
    } or {"cards/0": []}


def questions(site: Site) -> list[str]:
    """For each row of the finder what is searched where nothing else can be: its summary, words, questions and what is seen.

    Its whole text follows, and that of the story after its book, while the collection is small enough to be carried whole:
    the same words are then found from a memory stick as by the text index.
    """
    collection = site.collection
    short = [
        " · ".join(dict.fromkeys(map(_plain, (idea.fields.summary or "", *idea.searched))))
        for idea in ideas(collection)
    ]
    whole = [" · ".join((text, *_text(site, idea))) for text, idea in zip(short, ideas(collection), strict=True)]
    return whole if sum(map(len, whole)) <= collection.reference.limits.stick_characters else short


def _text(site: Site, idea: Idea) -> Iterator[str]:
    """What stands on the page of an idea, and on that of the story of a book."""
    story = site.collection.stories.get(idea.book) if isinstance(idea.fields, Book) else None
    for page in (idea.page, *([story] if story else [])):
        yield " ".join(page.prose.text.split())


def _plain(text: str) -> str:
    return " ".join(inline(text).striptags().split())
