"""Starting files for authors, as the kinds of page have them: each holds every field, filled or with a comment."""

from __future__ import annotations

import re
from pathlib import Path
from string import Template

from ..check.file_name_unusable import wrong_with_name
from ..model.address import CONTENT, slug
from ..parse.yaml_text import BrokenYaml, load
from .new_file import write_new
from .page_kinds.kind import NotListed, Starter
from .page_kinds.table import PAGE_KINDS
from .starter_examples import with_examples
from .starter_year import for_year

_LONGEST_TITLE = 200
_NOTE = re.compile(r"^ *#.*\n| +# .*$", re.MULTILINE)


class AlreadyThere(Exception):
    """The file to be written exists; nothing was changed."""


class NoSuchBook(Exception):
    """The book a page is for has no folder."""


class Unnameable(Exception):
    """A title that makes no name for a file; says why."""


def starters() -> dict[str, tuple[str, Starter]]:
    """The kinds an author can start, by name: what a page of the kind is called, and what it starts with."""
    return {
        kind.name: (kind.names.one, kind.starter)
        for kind in PAGE_KINDS.values()
        if not isinstance(kind.starter, NotListed)
    }


def folder_of(title: str) -> str:
    """What a page of that title is called in its address."""
    return slug(re.sub("['’]", "", title))


def start(root: Path, starter: Starter, title: str, date: str, book: str = "", notes: bool = True) -> Path:
    """Writes the file a page starts with; without ``book`` it speaks of the first there is.

    Its notes are for who writes in the file; who writes in a form reads there what a field is for.
    """
    if starter.for_book and not (root / CONTENT / "books" / book / "index.md").is_file():
        raise NoSuchBook(book)
    name = folder_of(title)
    if not title.strip():
        raise Unnameable("A title is needed, in quotes.")
    if not name and "$slug" in starter.path:
        raise Unnameable(
            f'"{_short(title)}" has no letter from a to z and no digit, of which the address of its page is made.'
        )
    if "$slug" in starter.path and (why := wrong_with_name(name)):
        raise Unnameable(f'"{_short(name)}" would be the name of its file, and {why}.')
    if len(title) > _LONGEST_TITLE:
        raise Unnameable(f'"{_short(title)}" is longer than {_LONGEST_TITLE} letters.')
    books = sorted(path.parent.name for path in (root / CONTENT / "books").glob("*/index.md"))
    told: dict[str, str | int] = {
        "title": " ".join(title.replace("\\", "\\\\").replace('"', "'").split()),
        "slug": name,
        "date": date,
        "book": book or (books[0] if books else "name-of-a-book"),
    }
    path, number = _next(root / CONTENT, starter.path, told)
    told["year"] = _best_year(root / CONTENT / "books" / str(told["book"]) / "index.md")
    told |= {"number": number, "needs": f"[{number - 1}]" if number > 1 else "[]"}
    text = starter.text.read_text(encoding="utf-8")
    text = for_year(root, str(told["year"]), Template(text).substitute(told))
    if not notes:
        _, front, body = text.split("---\n", 2)
        return write_page(path, f"---\n{_NOTE.sub('', front)}---\n{body}")
    example = next(kind.example for kind in PAGE_KINDS.values() if kind.starter is starter)
    return write_page(path, with_examples(example.read_text(encoding="utf-8"), text))


def _best_year(record: Path) -> str:
    """The year that a book's record says it fits best, as it is written there; Year 2 where it cannot be read."""
    try:
        front = record.read_text(encoding="utf-8").split("---\n")[1]
        return str(load(front)[0]["years"]["best"])
    except (OSError, UnicodeError, BrokenYaml, LookupError, TypeError):
        return "2"


def _short(words: str) -> str:
    return words if len(words) <= 40 else f"{words[:40]}…"


def _next(content: Path, path: str, told: dict[str, str | int]) -> tuple[Path, int]:
    """Where a page goes, and its number: the first that is free, where its path has one."""
    number = 1
    while "$number" in path and (content / Template(path).substitute(told, number=number)).exists():
        number += 1
    return content / Template(path).substitute(told, number=number), number


def write_page(path: Path, text: str) -> Path:
    """Writes a page that is not there yet. Raises ``AlreadyThere``."""
    path.parent.mkdir(parents=True, exist_ok=True)
    try:
        write_new(path, text.encode("utf-8"))
    except FileExistsError:
        raise AlreadyThere(path) from None
    return path
