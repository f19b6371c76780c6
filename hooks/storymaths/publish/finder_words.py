"""The words the finder shows and searches beside its columns: summaries by the shelf, and questions for the memory stick."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from ..model.book import Book
from ..model.home import Home
from ..model.session import Session
from ..render.inline import inline
from ..render.site import Site
from .ideas import Idea, ideas

SHELF = 25
"""Ideas whose summaries stand in one file; the finder asks for the shelves of the cards it shows."""


def shelves(site: Site) -> Mapping[str, list[str]]:
    """Each shelf's name, ``cards/0`` and so on, and its summaries in the order of its rows."""
    summaries = [_plain(idea.fields.summary) for idea in ideas(site.collection)]
    return {
        f"cards/{start // SHELF}": summaries[start : start + SHELF] for start in range(0, len(summaries), SHELF)
    } or {"cards/0": []}


def questions(site: Site) -> list[str]:
    """For each row of the finder its summary, words, questions and what is seen: searched where nothing else can be."""
    return [" · ".join(dict.fromkeys(_plain(part) for part in _parts(idea))) for idea in ideas(site.collection)]


def _parts(idea: Idea) -> Iterator[str]:
    fields: Any = idea.fields
    yield fields.summary
    if isinstance(fields, Session):
        if words := (*fields.words.new, *fields.words.again, *fields.symbols.new):
            yield ", ".join(words)
        yield from (stop.ask for reading in fields.reads for stop in reading.stops)
        yield fields.exit_question.ask
    elif isinstance(fields, Home):
        if fields.words:
            yield ", ".join(fields.words)
        yield fields.say_first
        yield from (question.ask for question in fields.ask)
    elif isinstance(fields, Book):
        yield from (character.name for character in fields.cast)
        yield from (seen.see for seen in fields.maths_on_pages)


def _plain(text: str) -> str:
    return " ".join(inline(text).striptags().split())
