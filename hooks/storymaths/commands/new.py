"""The command ``new``: a starting file for a book, a session, a home activity or a series."""

from __future__ import annotations

import argparse
import datetime
from pathlib import Path

from ..check.suggestion import did_you_mean
from . import starters
from .command import FAILED, Command, Misused, in_project


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """What is started, and its title."""
    kinds = parser.add_subparsers(dest="kind", required=True, metavar="KIND")
    for kind in starters.KINDS:
        starter = kinds.add_parser(kind, help=f"start a {'home activity' if kind == 'home' else kind}")
        if kind in ("session", "home"):
            starter.add_argument("book", help="the book's folder name in content/books")
        starter.add_argument("title", help="its title, in quotes")


def run(root: Path, options: argparse.Namespace) -> int:
    """Writes the files and says which. Raises ``Misused``."""
    try:
        written = _start(root, options)
    except starters.AlreadyThere as error:
        raise Misused(f"{error.args[0]} is already there. Nothing was written.", FAILED) from None
    except starters.NoSuchBook as error:
        known = [path.parent.name for path in (root / "content" / "books").glob("*/index.md")]
        near = did_you_mean(str(error), known)
        raise Misused(f'There is no book "{error}" in content/books.{near}', FAILED) from None
    for path in written:
        print(f"Wrote {path.relative_to(root)}")
    print("It is a draft: its author sees it, and a build leaves it out until status: draft is taken out.")
    return 0


def _start(root: Path, options: argparse.Namespace) -> list[Path]:
    if options.kind == "book":
        return starters.new_book(root, options.title)
    if options.kind == "series":
        return starters.new_series(root, options.title, datetime.date.today().isoformat())
    start = starters.new_session if options.kind == "session" else starters.new_home
    return start(root, options.book, options.title)


COMMAND = Command(add_arguments, in_project(run))
