"""The words the finder shows and searches beside its columns: summaries by the shelf, and questions for the memory stick."""

from __future__ import annotations

from collections.abc import Mapping

from ..render.inline import inline
from ..render.site import Site
from .ideas import ideas

SHELF = 25
"""Ideas whose summaries stand in one file; the finder asks for the shelves of the cards it shows."""


def shelves(site: Site) -> Mapping[str, list[str]]:
    """Each shelf's name, ``cards/0`` and so on, and its summaries in the order of its rows."""
    summaries = [_plain(idea.fields.summary or "") for idea in ideas(site.collection)]
    return {
        f"cards/{start // SHELF}": summaries[start : start + SHELF] for start in range(0, len(summaries), SHELF)
    } or {"cards/0": []}


def questions(site: Site) -> list[str]:
    """For each row of the finder its summary, words, questions and what is seen: searched where nothing else can be."""
    return [
        " · ".join(dict.fromkeys(map(_plain, (idea.fields.summary or "", *idea.searched))))
        for idea in ideas(site.collection)
    ]


def _plain(text: str) -> str:
    return " ".join(inline(text).striptags().split())
