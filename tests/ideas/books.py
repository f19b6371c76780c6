"""Books to find ideas in: the frozen collection's, and one that a stranger might bring."""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path

from project import collection, reference
from storymaths.ideas.find import find_ideas
from storymaths.ideas.idea import Ideas
from storymaths.model.collection import Collection
from storymaths.model.document import Document
from storymaths.parse.document import parse_document

STRANGER = "jam-for-the-winter-stall"


@lru_cache(maxsize=1)
def stranger() -> Collection:
    """A collection with nothing but the record of a book that nobody here had in mind: 28 pages, no picture, no story."""
    text = (Path(__file__).parent / "stranger.md").read_text(encoding="utf-8")
    page = parse_document(f"content/books/{STRANGER}/index.md", text)
    assert isinstance(page, Document), page
    return Collection((page,), (), frozenset({page.path}), reference())


@lru_cache(maxsize=16)
def ideas_for(book: str, year: int) -> Ideas:
    """Found once a run."""
    return find_ideas(stranger() if book == STRANGER else collection(), book, year)
