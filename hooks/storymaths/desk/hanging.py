"""The lines of a book that hang on a fact of its cast which has just been changed, for the desk to show beside its box."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from ..model.book import Book
from ..naming.where import Line, holds, lines_about
from .control import id_under
from .page_text import FRONT, PageText

_SURE = ("by name, and more", "with a number")


@dataclass(frozen=True, slots=True)
class Hanging:
    """A fact that is another now, the box it is in, and the lines that still hold what it was: for sure, or perhaps."""

    box: str
    who: str
    fact: str
    was: int | str
    sure: Sequence[Line]
    perhaps: Sequence[Line]


def find_hanging(root: Path, folder: str, book: Book, before: PageText, after: PageText) -> Iterator[Hanging]:
    """For each number, word or time of the cast that differs. ``folder`` is the book's, from the project root."""
    changed = list(_changed(before, after))
    if not changed:
        return
    pages = sorted((root / folder).glob("*.md"))
    texts = {
        path.relative_to(root).as_posix(): path.read_text("utf-8", "replace") for path in pages if not path.is_symlink()
    }
    for place, id, fact, was in changed:
        known = next((one for one in book.cast if one.id == id), None)
        if known is None:
            continue
        old = known.model_copy(update={"facts": {**known.facts, fact: was}})
        lines = [line for line in lines_about(texts, book, old, fact) if line.sort != "by name"]
        sure = [line for line in lines if line.sort in _SURE and holds(line.text, was)]
        box = id_under(id_under(f"{FRONT}.cast.{place}", "facts"), fact)
        yield Hanging(box, known.name, fact, was, sure, [line for line in lines if line not in sure])


def _changed(before: PageText, after: PageText) -> Iterator[tuple[int, str, str, int | str]]:
    """Each number, word or time of a character that is another now: its place in the cast, whose it is, its name, what it was."""
    old = {id: facts for _, id, facts in _facts(before)}
    for place, id, facts in _facts(after):
        for fact, now in facts.items():
            was = old.get(id, {}).get(fact)
            if isinstance(was, int | str) and not isinstance(was, bool) and now != was:
                yield place, id, str(fact), was


def _facts(page: PageText) -> Iterator[tuple[int, str, Mapping[Any, Any]]]:
    cast = (page.raw or {}).get("cast")
    for place, one in enumerate(cast if isinstance(cast, list) else ()):
        if isinstance(one, dict) and isinstance(facts := one.get("facts"), dict):
            yield place, str(one.get("id")), facts
