"""The HTML that authors may write among their Markdown, and where its addresses may lead."""

from __future__ import annotations

from collections.abc import Mapping

ANYWHERE = frozenset({"class", "dir", "id", "lang", "title"})
"""Attributes any of the tags may carry."""
TAGS: Mapping[str, frozenset[str]] = {
    "a": frozenset({"href"}),
    "abbr": frozenset(),
    "br": frozenset(),
    "details": frozenset({"open"}),
    "img": frozenset({"src", "alt", "width", "height"}),
    "kbd": frozenset(),
    "q": frozenset(),
    "small": frozenset(),
    "span": frozenset(),
    "sub": frozenset(),
    "summary": frozenset(),
    "sup": frozenset(),
}
"""Each tag, and the attributes it may carry besides."""
SCHEMES = frozenset({"https", "mailto"})
"""How an address that leads out of the site may begin."""
