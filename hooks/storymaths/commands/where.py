"""The command ``where``: every line in which a fact of a character stands, by name or by its number."""

from __future__ import annotations

import argparse
from collections.abc import Mapping
from itertools import groupby
from pathlib import Path

from ..model.book import Book, Character
from ..model.document import Document
from ..naming.where import HEADINGS, HEADINGS_OF_WORDS, lines_about
from ..parse.suggestion import did_you_mean
from ..reading import read_and_check
from .command import FAILED, Command, Misused, in_project
from .terminal import as_text, spell_out

_LONGEST = 160


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Which fact, and of which book."""
    parser.add_argument("fact", metavar="WHO.FACT", help="a character’s id and a fact, such as ram.mass")
    parser.add_argument("--book", help="the folder of the book, where more than one has such a character")


def run(root: Path, options: argparse.Namespace) -> int:
    """Lists the lines; 1 where ``site_data/`` cannot be used. Raises ``Misused``."""
    reading = read_and_check(root)
    if reading.collection is None:
        print(as_text(reading.problems))
        return FAILED
    book, who = _character(reading.collection.books, options)
    fact = options.fact.partition(".")[2]
    pages = sorted((root / book.folder).glob("*.md"))
    texts = {path.relative_to(root).as_posix(): path.read_text(encoding="utf-8") for path in pages}
    lines = lines_about(texts, book.fields, who, fact)
    print(f"{who.name}: {fact} is {who.facts[fact]} ({book.fields.title}).")
    headings = HEADINGS_OF_WORDS if isinstance(who.facts[fact], str) else HEADINGS
    for sort, group in groupby(lines, key=lambda line: line.sort):
        listed = list(group)
        print(f"\n{headings[sort].format(name=who.name, value=who.facts[fact])} ({len(listed)}):")
        for line in listed:
            text = line.text if len(line.text) <= _LONGEST else f"{line.text[:_LONGEST]} …"
            print(spell_out(f"  {line.path}:{line.number}  {text}"))
    return 0


def _character(books: Mapping[str, Document[Book]], options: argparse.Namespace) -> tuple[Document[Book], Character]:
    name, _, fact = options.fact.partition(".")
    if options.book and options.book not in books:
        raise Misused(f'There is no book "{options.book}".{did_you_mean(options.book, books)}')
    wanted = {options.book: books[options.book]} if options.book else books
    found = [(book, one) for book in wanted.values() for one in book.fields.cast if one.id == name]
    have = [(book, one) for book, one in found if fact in one.facts]
    if not have:
        known = [f"{one.id}.{key}" for book in wanted.values() for one in book.fields.cast for key in one.facts]
        raise Misused(f'No character has the fact "{options.fact}".{did_you_mean(options.fact, known)}')
    if len(have) > 1:
        of = ", ".join(book.book or "" for book, _ in have)
        raise Misused(f"{options.fact} is in more than one book ({of}): add --book and one of these.")
    return have[0]


COMMAND = Command(add_arguments, in_project(run))
