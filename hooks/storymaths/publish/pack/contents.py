"""What of a built site goes into a pack: told by address alone, so that whatever is published for a series is packed."""

from __future__ import annotations

import re
from collections.abc import Mapping
from pathlib import Path

from .page_links import page_for_usb, targets_of

PAGES = "pages/"
"""The folder of the pack the site stands in."""
_OWN = re.compile(r"(books|series)/(?!index\.html$).*")
"""Of the series itself and of its books."""
_IDEA = re.compile(r"(concepts|themes|years|objectives)/(?!(.*/)?index\.html$).*\.html")
"""A page about an idea; it is packed when a page of the series or its books leads to it."""
_ON_SERVERS_ONLY = re.compile(r"pagefind/.*|text-rows\.json|404\.html|sitemap\.xml|.*\.(gz|br)|(.*/)?\..*")
"""What works only where there is a server, or is for search engines."""


def select_pages(site: Path) -> dict[str, bytes]:
    """The files of a site built for one series, by address, as they work from a memory stick."""
    files = {path.relative_to(site).as_posix(): path for path in sorted(site.rglob("*")) if path.is_file()}
    there = {name: path.read_bytes() for name, path in files.items() if not _ON_SERVERS_ONLY.fullmatch(name)}
    led_to = _led_to(there)
    kept = {name: content for name, content in there.items() if name in led_to or not _IDEA.fullmatch(name)}
    return {name: _page(name, content, kept) if name.endswith(".html") else content for name, content in kept.items()}


def _led_to(there: Mapping[str, bytes]) -> set[str]:
    own = [name for name in there if name.endswith(".html") and _OWN.fullmatch(name)]
    return {target for name in own for target in targets_of(there[name].decode("utf-8"), name)}


def _page(name: str, content: bytes, kept: Mapping[str, bytes]) -> bytes:
    return page_for_usb(content.decode("utf-8"), name, kept).encode("utf-8")
