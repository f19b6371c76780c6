"""The pages of a built site as a browser would find them: what they link to, load, name and could run."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from html.parser import HTMLParser
from pathlib import Path

from ..model.address import CONTENT
from ..model.problem import Place

NOT_FOUND = "404.html"
"""The page for addresses that lead nowhere; it stands for any address and is none itself."""
_ADDRESSES = ("href", "src", "action", "poster", "data")
_ADDRESSES_TOO = ("formaction", "xlink:href")
"""Attributes that may run something, though nobody is led anywhere by them."""
_UNREAD = re.compile(r"[\x00-\x20]")
"""What a browser leaves out of an address before it reads it."""
_DATA = frozenset({"application/ld+json", "application/json"})


@dataclass(slots=True)
class BuiltPage:
    """One page."""

    size: int
    title: str = ""
    policy: str = ""
    links: list[str] = field(default_factory=list)
    """Where it leads."""
    loads: list[str] = field(default_factory=list)
    """What a browser fetches to show it."""
    ids: set[str] = field(default_factory=set)
    dangers: list[str] = field(default_factory=list)
    """What could run or load something beside its own files, in words."""


@dataclass(frozen=True)
class BuiltSite:
    """A built site in a folder."""

    folder: Path
    pages: Mapping[str, BuiltPage]
    """By address from the site's root."""
    files: Mapping[str, int]
    """Every file, by address, and its size in bytes."""
    written: frozenset[str] = frozenset()
    """Content files, as paths from the project's root."""

    def titles(self) -> dict[str, str]:
        """The addresses of its pages, with their titles."""
        return {address: page.title for address, page in self.pages.items() if address != NOT_FOUND}

    def place_of(self, address: str) -> Place:
        """Where a page's words were written: its content file, or the page itself if the build makes it from many."""
        source = f"{CONTENT}{address.removesuffix('.html')}.md"
        return Place(source if source in self.written else address)


def read_built(folder: Path, written: frozenset[str] = frozenset()) -> BuiltSite:
    """Reads every page of a built site. ``written`` are the content files, to tell an author which one to mend."""
    files = {path.relative_to(folder).as_posix(): path for path in sorted(folder.rglob("*")) if path.is_file()}
    pages = {address: _read(path) for address, path in files.items() if address.endswith(".html")}
    sizes = {address: path.stat().st_size for address, path in files.items()}
    return BuiltSite(folder, pages, sizes, written)


def _read(path: Path) -> BuiltPage:
    data = path.read_bytes()
    return _Reader(BuiltPage(len(data))).of(data.decode("utf-8"))


class _Reader(HTMLParser):
    def __init__(self, page: BuiltPage) -> None:
        super().__init__()
        self._page, self._in_title, self._in_head = page, False, True

    def of(self, html: str) -> BuiltPage:
        self.feed(html)
        self.close()
        self._page.title = " ".join(self._page.title.split())
        return self._page

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        page, given = self._page, {name: value or "" for name, value in attrs}
        self._in_head = self._in_head and tag != "body"
        self._in_title = tag == "title" and self._in_head
        if "id" in given:
            page.ids.add(given["id"])
        if tag == "meta" and given.get("http-equiv", "").lower() == "content-security-policy" and not page.loads:
            page.policy = given.get("content", "")
        for name in _ADDRESSES:
            if given.get(name):
                (page.links if tag in ("a", "form", "area") or _only_names(tag, given) else page.loads).append(
                    given[name]
                )
        page.dangers += _dangers(tag, given)

    def handle_endtag(self, tag: str) -> None:
        if tag == "title":
            self._in_title = False

    def handle_data(self, data: str) -> None:
        if self._in_title:
            self._page.title += data


def _only_names(tag: str, given: Mapping[str, str]) -> bool:
    """Whether a ``link`` says where something is, and makes no browser fetch it."""
    return tag == "link" and given.get("rel") in ("canonical", "alternate", "license", "author", "next", "prev")


def _dangers(tag: str, given: Mapping[str, str]) -> list[str]:
    found = [
        f'<{tag}> has the attribute "{name}"' for name in given if name.startswith("on") or name in ("style", "srcdoc")
    ]
    if tag in ("iframe", "frame", "object", "embed", "base", "applet"):
        found.append(f"there is a <{tag}>")
    if tag == "style" or (tag == "script" and "src" not in given and given.get("type") not in _DATA):
        found.append(f"there is a <{tag}> within the page")
    if any(
        _UNREAD.sub("", given.get(name, "")).lower().startswith(("javascript:", "vbscript:", "data:text"))
        for name in (*_ADDRESSES, *_ADDRESSES_TOO)
    ):
        found.append(f"a <{tag}> has an address that runs a script")
    return found
