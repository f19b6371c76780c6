"""Every link of the built site leads to a file that is there and a place that is on it; nothing is loaded from elsewhere."""

from __future__ import annotations

import re
from collections.abc import Iterator
from posixpath import dirname, normpath
from urllib.parse import unquote, urlsplit

from ..model.problem import Place, Problem
from ..model.rule import HOUSE_RULE, Rule
from .built_pages import NOT_FOUND, BuiltPage, BuiltSite

RULE = Rule(
    name="published-link-broken",
    says="In the finished site every link leads to a file that is there, and to a place that is on it.",
    why="Pages are made from many files; only the finished site shows whether they fit together.",
    source=HOUSE_RULE,
    wrong='href="session-5.html" where there is no session 5',
    right='href="session-4.html"',
)
_IN_STYLE = re.compile(r"url\(\s*[\"']?([^)\"']+)")
_TOP = ("", "top")
"""Places that every page has (HTML standard, navigating to a fragment)."""


def check(site: BuiltSite) -> Iterator[Problem]:
    """A problem for each address that leads nowhere, and for each file loaded from another site."""
    for address, page in site.pages.items():
        for wrong, fix in dict.fromkeys((*_links(site, address, page), *_loads(page))):
            yield RULE.problem(site.place_of(address), f"{address}: {wrong}", fix)
    for address in site.files:
        if address.endswith(".css"):
            for named in _IN_STYLE.findall((site.folder / address).read_text(encoding="utf-8")):
                if not named.startswith(("#", "data:")) and _found(address, unquote(named)) not in site.files:
                    yield RULE.problem(
                        Place(address), f"{address} names {named}, which is not there.", "correct the name."
                    )


def _links(site: BuiltSite, address: str, page: BuiltPage) -> Iterator[tuple[str, str]]:
    for link in (*page.links, *page.loads):
        parts = urlsplit(link)
        if parts.scheme or parts.netloc or (parts.path.startswith("/") and address == NOT_FOUND):
            continue
        found = _found(address, unquote(parts.path))
        if found not in site.files:
            yield f"a link leads to {link}, which is not there.", "correct the link, or say where the page has moved."
        elif (
            parts.fragment not in _TOP and found in site.pages and unquote(parts.fragment) not in site.pages[found].ids
        ):
            yield f"a link leads to {link}, and there is no such place on that page.", "correct the name after the #."


def _found(address: str, path: str) -> str:
    if not path:
        return address
    found = normpath(f"{dirname(address)}/{path}" if dirname(address) else path)
    return f"{found}/index.html" if path.endswith("/") else found


def _loads(page: BuiltPage) -> Iterator[tuple[str, str]]:
    for load in page.loads:
        if urlsplit(load).netloc:
            yield f"{load} is loaded from another site.", "keep the file in the collection."
