"""The command ``solve``: one activity worked out, or all of a page, with every answer and the years it fits."""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

from ..activities.rules import every_rule
from ..activities.solve_report import as_json, as_text
from ..activities.work_out import work_out
from ..check.rules import rules
from ..reading import read_and_check
from .activity_file import add_file_arguments, read_activity
from .command import FAILED, Command, Misused, in_project

_USUAL_YEAR = 2
_FORMATS = {"text": as_text, "json": as_json}


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Which activity, and how to print."""
    parser.add_argument("--format", choices=_FORMATS, default="text", help="how to print (default: text)")
    add_file_arguments(parser)


def run(root: Path, options: argparse.Namespace) -> int:
    """Prints what was worked out; 1 on problems. Raises ``Misused``."""
    if options.file.endswith(".md"):
        return _solve_page(root, options)
    given = read_activity(root, options)
    year = given.book.years.best if given.book else _USUAL_YEAR
    worked = work_out(given.text, given.name, 1, given.book, year, given.reference, folder=given.folder, judged=False)
    print(_FORMATS[options.format](worked, given.reference))
    return FAILED if worked.problems else 0


def _solve_page(root: Path, options: argparse.Namespace) -> int:
    """Prints every activity of a page with its versions for the years the page bends to; 1 on problems with them."""
    reading = read_and_check(root)
    wanted = Path(options.file).resolve()
    path = next((path for path in reading.activities if (root / path).resolve() == wanted), None)
    if path is None or reading.collection is None:
        raise Misused(f"{options.file} is not a page of the content that can be read; `storymaths check` says more.")
    reference, names = reading.collection.reference, every_rule().keys() - rules().keys()
    told = [_FORMATS[options.format](one.worked, reference) for one in reading.activities[path]]
    print(f"[{', '.join(told)}]" if options.format == "json" else "\n\n\n".join(told))
    problems = [one for one in reading.problems if one.place.path == path and one.rule in names]
    print("\n".join(map(str, problems)), end="\n" * bool(problems), file=sys.stderr)
    return FAILED if problems else 0


COMMAND = Command(add_arguments, in_project(run))
