"""The links of a finished site: what its pages name, load and call their parts, and which of it leads nowhere."""

from __future__ import annotations

from html.parser import HTMLParser
from pathlib import Path
from urllib.parse import unquote, urlsplit


class Addresses(HTMLParser):
    """Every address a page names, what it would load from it, and every id on it."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.links: list[str] = []
        self.loads: list[str] = []
        self.ids: list[str] = []
        self.feed(text)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = dict(attrs)
        self.ids += [given["id"]] if given.get("id") else []
        for name in ("href", "src", "action"):
            if value := given.get(name):
                (self.links if tag in ("a", "form") else self.loads).append(value)


def pages(site: Path) -> dict[Path, Addresses]:
    """Every page of the site but that for what is not found."""
    return {
        path: Addresses(path.read_text(encoding="utf-8"))
        for path in sorted(site.rglob("*.html"))
        if path.name != "404.html"
    }


def broken_links(site: Path) -> list[str]:
    """Each link of a page that leads to no file, or to no place on its page."""
    found = pages(site)
    broken = []
    for path, page in found.items():
        for link in (*page.links, *page.loads):
            parts = urlsplit(link)
            if parts.scheme or parts.netloc:
                continue
            target = (path.parent / unquote(parts.path)).resolve() if parts.path else path
            if not target.is_file():
                broken.append(f"{path.relative_to(site)}: {link}")
            elif parts.fragment and target in found and parts.fragment not in found[target].ids:
                broken.append(f"{path.relative_to(site)}: no #{parts.fragment} on {target.name}")
    return broken
