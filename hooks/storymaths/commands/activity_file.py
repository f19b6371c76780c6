"""The activity the commands ``solve`` and ``tune`` are given: from a file or from standard input, with its book."""

from __future__ import annotations

import argparse
import sys
from dataclasses import dataclass
from pathlib import Path

from ..model.book import Book
from ..model.document import Document
from ..model.reference import Reference
from ..parse.document import parse_document
from ..parse.reference import ReferenceBroken, read_reference
from ..parse.suggestion import did_you_mean
from .command import Misused

_STANDARD_INPUT = "-"


@dataclass(frozen=True, slots=True)
class ActivityFile:
    """An activity's text, and what it leans on."""

    name: str
    text: str
    book: Book | None
    folder: str
    """The book's inside ``content/``; empty without one."""
    reference: Reference


def add_file_arguments(parser: argparse.ArgumentParser) -> None:
    """Which file, and whose cast."""
    parser.add_argument("file", metavar="FILE", help="a file with the activity's YAML, or - for standard input")
    parser.add_argument("--book", metavar="SLUG", help="the book its cast is from, by folder name")


def read_activity(root: Path, options: argparse.Namespace) -> ActivityFile:
    """The activity that is asked about. Raises ``Misused``."""
    try:
        reference = read_reference(root)
    except ReferenceBroken:
        raise Misused("The data in site_data cannot be used; `storymaths check` says why.") from None
    name, text = _read(options.file)
    if options.book is None:
        return ActivityFile(name, text, None, "", reference)
    return ActivityFile(name, text, _book(root, options.book), f"books/{options.book}", reference)


def _read(file: str) -> tuple[str, str]:
    try:
        if file == _STANDARD_INPUT:
            return _STANDARD_INPUT, sys.stdin.read()
        return file, Path(file).read_text(encoding="utf-8")
    except (OSError, UnicodeDecodeError):
        raise Misused(f"{file} cannot be read as a text file.") from None


def _book(root: Path, slug: str) -> Book:
    books = root / "content" / "books"
    known = sorted(path.parent.name for path in books.glob("*/index.md"))
    if slug not in known:
        raise Misused(f'There is no book "{slug}" in content/books.{did_you_mean(slug, known)}')
    path = books / slug / "index.md"
    page = parse_document(path.relative_to(root).as_posix(), path.read_text(encoding="utf-8"))
    if not isinstance(page, Document) or not isinstance(page.fields, Book):
        raise Misused(f"The record of {slug} cannot be used; `storymaths check` says why.")
    return page.fields
