"""The commands ``solve`` and ``tune``: one activity, from a file or from standard input."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from .activities.solve_report import as_json, as_text
from .activities.tune import tune, tuned_as_text
from .activities.work_out import work_out
from .check.suggestion import did_you_mean
from .model.book import Book
from .model.document import Document
from .model.reference import Reference
from .parse.document import parse_document
from .parse.reference import ReferenceBroken, read_reference

FAILED, MISUSED = 1, 2
_STANDARD_INPUT = "-"
_USUAL_YEAR = 2
_FORMATS = {"text": as_text, "json": as_json}


class _Misused(Exception):
    """The command was asked for something that is not there."""


def run(root: Path, options: argparse.Namespace) -> int:
    """Runs ``solve`` or ``tune``; 0 when all is well, 1 on problems, 2 when it is misused."""
    commands: dict[str, Callable[[_Asked, argparse.Namespace], int]] = {"solve": _solve, "tune": _tune}
    try:
        return commands[options.command](_asked(root, options), options)
    except _Misused as error:
        print(error, file=sys.stderr)
        return MISUSED


@dataclass(frozen=True, slots=True)
class _Asked:
    name: str
    text: str
    book: Book | None
    folder: str
    reference: Reference


def _asked(root: Path, options: argparse.Namespace) -> _Asked:
    try:
        reference = read_reference(root)
    except ReferenceBroken:
        raise _Misused("The data in site_data cannot be used; `storymaths check` says why.") from None
    name, text = _read(options.file)
    if options.book is None:
        return _Asked(name, text, None, "", reference)
    return _Asked(name, text, _book(root, options.book), f"books/{options.book}", reference)


def _read(file: str) -> tuple[str, str]:
    try:
        if file == _STANDARD_INPUT:
            return _STANDARD_INPUT, sys.stdin.read()
        return file, Path(file).read_text(encoding="utf-8")
    except (OSError, UnicodeDecodeError):
        raise _Misused(f"{file} cannot be read as a text file.") from None


def _book(root: Path, slug: str) -> Book:
    books = root / "content" / "books"
    known = sorted(path.parent.name for path in books.glob("*/index.md"))
    if slug not in known:
        raise _Misused(f'There is no book "{slug}" in content/books.{did_you_mean(slug, known)}')
    path = books / slug / "index.md"
    page = parse_document(path.relative_to(root).as_posix(), path.read_text(encoding="utf-8"))
    if not isinstance(page, Document) or not isinstance(page.fields, Book):
        raise _Misused(f"The record of {slug} cannot be used; `storymaths check` says why.")
    return page.fields


def _solve(asked: _Asked, options: argparse.Namespace) -> int:
    year = asked.book.years.best if asked.book else _USUAL_YEAR
    worked = work_out(asked.text, asked.name, 1, asked.book, year, asked.reference, folder=asked.folder, judged=False)
    print(_FORMATS[options.format](worked, asked.reference))
    return FAILED if worked.problems else 0


def _tune(asked: _Asked, options: argparse.Namespace) -> int:
    tuned = tune(asked.text, options.year, options.answers, asked.book, asked.reference)
    print(tuned_as_text(tuned))
    return FAILED if tuned.problems else 0
