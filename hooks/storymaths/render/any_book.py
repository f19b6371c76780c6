"""The page of something to do with any book: its sum is worked out on the page, and its examples here by the same script."""

from __future__ import annotations

import json
from collections.abc import Sequence
from functools import lru_cache

from ..expression.noun import singular
from ..model.any_book import AnyBook, FoundSum
from ..model.book import Book
from ..model.collection import Collection
from ..model.document import Document
from ..scripts.run import run
from .activity import body_with_activities
from .site import Rendered, Site

_SUMS = "any-book/sums.js"
_MOST_NAMED = 4
"""Books of ours that are named as such a book."""


def draw_any_book(site: Site, page: Document[AnyBook]) -> Rendered:
    """What to look for in a book, what to do, what to ask, and the sum with the numbers that are found there."""
    idea, source = page.fields, page.source
    nouns = _nouns(idea.work_out)
    html = site.draw_with_words(
        "any_book.html",
        source,
        page=page,
        idea=idea,
        ours=_books_about(site.collection, idea)[:_MOST_NAMED],
        body=body_with_activities(site, page, source, level=3),
        nouns=json.dumps(nouns, ensure_ascii=False),
        examples=list(zip(idea.work_out.such_as, worked_examples(idea.work_out), strict=True)),
    )
    return Rendered(source, idea.title, idea.summary, html, "any-book")


def worked_examples(found: FoundSum) -> tuple[tuple[str, ...], ...]:
    """What the numbers of each example come to, in sentences, the answer first."""
    return tuple(_work_out(found.sum, numbers, tuple(_nouns(found))) for numbers in found.such_as)


@lru_cache(maxsize=256)
def _work_out(sum_name: str, numbers: tuple[int, ...], nouns: tuple[tuple[str, str], ...]) -> tuple[str, ...]:
    return tuple(json.loads(run(_SUMS, "workOut", sum_name, numbers, nouns)))


def _nouns(found: FoundSum) -> list[tuple[str, str]]:
    return [(singular(many), many) for many in found.of]


def _books_about(collection: Collection, idea: AnyBook) -> Sequence[Document[Book]]:
    """Books of the collection with a theme of the idea."""
    return [book for book in collection.books.values() if set(book.fields.themes) & set(idea.themes)]
