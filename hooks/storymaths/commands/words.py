"""The command ``words``: where each word of the word bank is taught."""

from __future__ import annotations

import argparse
from pathlib import Path

from ..model.collection import Collection
from ..model.fields import year_name
from ..model.session import Session
from ..reading import read_and_check
from .command import FAILED, Command, in_project
from .terminal import as_text


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """It takes none."""


def run(root: Path, options: argparse.Namespace) -> int:
    """Lists the words; 1 where ``site_data/`` cannot be used."""
    reading = read_and_check(root)
    if reading.collection is None:
        print(as_text(reading.problems))
        return FAILED
    print(list_words(reading.collection))
    return 0


def list_words(collection: Collection) -> str:
    """Each word of the word bank, its year, and the sessions that teach it."""
    taught: dict[str, list[str]] = {}
    for page in collection.of_kind(Session):
        for word in page.fields.words.new:
            taught.setdefault(word, []).append(f"{page.fields.book}, session {page.fields.number}")
    lines = []
    for entry in sorted(collection.reference.words.values(), key=lambda entry: (entry.year, entry.word.lower())):
        where = "; ".join(taught.get(entry.word, ())) or ("everyday talk" if entry.everyday else "not yet taught")
        lines.append(f"{entry.word:<24} {year_name(entry.year):<10} {where}")
    return "\n".join(lines)


COMMAND = Command(add_arguments, in_project(run))
