"""Starting files for authors, as the kinds of page have them: each holds every field, filled or with a comment."""

from __future__ import annotations

import re
from pathlib import Path
from string import Template

from ..model.address import CONTENT, slug
from ..publish.page_kinds.kind import NotListed, Starter
from ..publish.page_kinds.table import PAGE_KINDS
from .starter_examples import with_examples


class AlreadyThere(Exception):
    """The file to be written exists; nothing was changed."""


class NoSuchBook(Exception):
    """The book a page is for has no folder."""


def starters() -> dict[str, tuple[str, Starter]]:
    """The kinds an author can start, by name: what a page of the kind is called, and what it starts with."""
    return {
        kind.name: (kind.names.one, kind.starter)
        for kind in PAGE_KINDS.values()
        if not isinstance(kind.starter, NotListed)
    }


def start(root: Path, starter: Starter, title: str, date: str, book: str = "") -> Path:
    """Writes the file a page starts with; without ``book`` it speaks of the first there is."""
    if starter.for_book and not (root / CONTENT / "books" / book / "index.md").is_file():
        raise NoSuchBook(book)
    books = sorted(path.parent.name for path in (root / CONTENT / "books").glob("*/index.md"))
    told: dict[str, str | int] = {
        "title": title.replace('"', "'"),
        "slug": slug(re.sub("['’]", "", title)),
        "date": date,
        "book": book or (books[0] if books else "name-of-a-book"),
    }
    path, number = _next(root / CONTENT, starter.path, told)
    told |= {"number": number, "needs": f"[{number - 1}]" if number > 1 else "[]"}
    text = Template(starter.text.read_text(encoding="utf-8")).substitute(told)
    example = next(kind.example for kind in PAGE_KINDS.values() if kind.starter is starter)
    return write_new(path, with_examples(example.read_text(encoding="utf-8"), text))


def _next(content: Path, path: str, told: dict[str, str | int]) -> tuple[Path, int]:
    """Where a page goes, and its number: the first that is free, where its path has one."""
    number = 1
    while "$number" in path and (content / Template(path).substitute(told, number=number)).exists():
        number += 1
    return content / Template(path).substitute(told, number=number), number


def write_new(path: Path, text: str) -> Path:
    """Writes a page that is not there yet. Raises ``AlreadyThere``."""
    path.parent.mkdir(parents=True, exist_ok=True)
    try:
        # "x" refuses to open a file that is there, so an author's work cannot be overwritten.
        with path.open("x", encoding="utf-8", newline="\n") as file:
            file.write(text)
    except FileExistsError:
        raise AlreadyThere(path) from None
    return path
