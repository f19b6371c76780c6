"""The command ``new``: a starting file for a page of any kind that authors start."""

from __future__ import annotations

import argparse
import datetime
from pathlib import Path

from ..expression.noun import with_article
from ..parse.suggestion import did_you_mean
from ..publish import starters
from .command import FAILED, Command, Misused, in_project
from .terminal import spell_out


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """What is started, and its title."""
    kinds = parser.add_subparsers(dest="kind", required=True, metavar="KIND")
    for name, (words, starter) in starters.starters().items():
        kind = kinds.add_parser(name, help=f"start {with_article(words)}")
        kind.set_defaults(starter=starter, book="")
        if starter.for_book:
            kind.add_argument("book", help="the book's folder name in content/books")
        kind.add_argument("title", help="its title, in quotes")


def run(root: Path, options: argparse.Namespace) -> int:
    """Writes the page and says where. Raises ``Misused``."""
    try:
        today = datetime.date.today().isoformat()
        written = starters.start(root, options.starter, options.title, today, options.book)
    except starters.AlreadyThere as error:
        raise Misused(f"{error.args[0]} is already there. Nothing was written.", FAILED) from None
    except starters.Unnameable as error:
        fix = "Use a title in the letters a to z; its title: in the file may then say it in any others."
        raise Misused(f"{spell_out(str(error))} Nothing was written. {fix}") from None
    except starters.NoSuchBook as error:
        known = [path.parent.name for path in (root / "content" / "books").glob("*/index.md")]
        near = did_you_mean(str(error), known)
        raise Misused(f'There is no book "{error}" in content/books.{near}', FAILED) from None
    print(f"Wrote {written.relative_to(root)}")
    print("It is a draft: its author sees it, and a build leaves it out until status: draft is taken out.")
    return 0


COMMAND = Command(add_arguments, in_project(run))
