"""The command ``ideas``: what maths is in a book, as activities that can be put into a session."""

from __future__ import annotations

import argparse
from pathlib import Path

from ..parse.suggestion import did_you_mean
from ..ideas.find import find_ideas
from ..ideas.report import as_json, as_text
from ..model.collection import Collection
from ..model.fields import year_name
from ..model.reference import Reference
from ..parse.collection import read_collection
from ..parse.reference import ReferenceBroken, read_reference
from ..reading import no_collecting
from .command import Command, Misused, in_project
from .year_argument import SAYS, read_year

_FIRST = 10
_FORMATS = {"text": as_text, "json": as_json}


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Which book, and what for."""
    parser.add_argument("book", metavar="BOOK", help="the book, by folder name")
    parser.add_argument("--year", type=read_year, metavar="N", help=f"{SAYS} (default: the book's best)")
    parser.add_argument("--objective", metavar="CODE", help="only ideas that practise this, such as 2C4")
    parser.add_argument(
        "--series", metavar="NAME", help="the series whose gaps come first (default: all with the book)"
    )
    parser.add_argument("--first", type=_count, default=_FIRST, metavar="N", help=f"how many (default: {_FIRST})")
    parser.add_argument("--format", choices=_FORMATS, default="text", help="how to print (default: text)")


def _count(text: str) -> int:
    if text.isdecimal() and int(text):
        return int(text)
    raise argparse.ArgumentTypeError(f"{text} is not a number of ideas such as 10")


def run(root: Path, options: argparse.Namespace) -> int:
    """Prints the ideas. Raises ``Misused``."""
    with no_collecting():
        print(_report(root, options))
    return 0


def _report(root: Path, options: argparse.Namespace) -> str:
    try:
        reference = read_reference(root)
    except ReferenceBroken:
        raise Misused("The data in site_data cannot be used; `storymaths check` says why.") from None
    collection = read_collection(root, reference)
    book, series = _book(collection, options.book), _series(collection, options.series)
    objective = _objective(reference, options.objective) if options.objective else None
    year = options.year
    if year is None:
        year = reference.objectives[objective].year if objective else collection.books[book].fields.years.best
    if objective and reference.objectives[objective].year != year:
        own = reference.objectives[objective].year
        raise Misused(f"{objective[1]} is an objective of {year_name(own)}: leave out --year, or give that one.")
    ideas = find_ideas(collection, book, year, objective, series)
    return _FORMATS[options.format](ideas, reference, options.first)


def _book(collection: Collection, name: str) -> str:
    plain = name.replace("\\", "/").rstrip("/").rpartition("/")[2]
    if plain in collection.books:
        return plain
    raise Misused(
        f'There is no book "{name}" in content/books that can be read.{did_you_mean(plain, collection.books)}'
    )


def _series(collection: Collection, name: str | None) -> str | None:
    if name is None or name in collection.series:
        return name
    raise Misused(f'There is no series "{name}" in content/series.{did_you_mean(name, collection.series)}')


def _objective(reference: Reference, code: str) -> tuple[str, str]:
    """The objective of a code, in the first framework that has it."""
    found = next((key for key in reference.objectives if key[1].lower() == code.lower()), None)
    if found is None:
        known = [key[1] for key in reference.objectives]
        raise Misused(f'"{code}" is not the code of an objective.{did_you_mean(code, known)}')
    return found


COMMAND = Command(add_arguments, in_project(run))
