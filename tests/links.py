"""The links of a finished site: what its pages name, load and call their parts, and which of it leads nowhere."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path
from urllib.parse import unquote, urlsplit

from lxml import etree


@dataclass(frozen=True)
class Addresses:
    """Every address a page names, what it would load from it, and every id on it."""

    links: tuple[str, ...]
    loads: tuple[str, ...]
    ids: tuple[str, ...]


@lru_cache(maxsize=3)
def pages(site: Path) -> Mapping[Path, Addresses]:
    """Every page of a finished site but that for what is not found."""
    return {path: _addresses_in(path) for path in sorted(site.rglob("*.html")) if path.name != "404.html"}


def _addresses_in(path: Path) -> Addresses:
    root = etree.HTML(path.read_bytes(), etree.HTMLParser(encoding="utf-8", huge_tree=True))
    links, loads = [], []
    for element in root.iter(etree.Element):
        for name in ("href", "src", "action"):
            if value := element.get(name):
                (links if element.tag in ("a", "form") else loads).append(value)
    return Addresses(tuple(links), tuple(loads), tuple(map(str, root.xpath("//@id[. != '']"))))


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
