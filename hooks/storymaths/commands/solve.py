"""The command ``solve``: one activity worked out, with every answer and the years it fits."""

from __future__ import annotations

import argparse
from pathlib import Path

from ..activities.solve_report import as_json, as_text
from ..activities.work_out import work_out
from .activity_file import add_file_arguments, read_activity
from .command import FAILED, Command, in_project

_USUAL_YEAR = 2
_FORMATS = {"text": as_text, "json": as_json}


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Which activity, and how to print."""
    parser.add_argument("--format", choices=_FORMATS, default="text", help="how to print (default: text)")
    add_file_arguments(parser)


def run(root: Path, options: argparse.Namespace) -> int:
    """Prints what was worked out; 1 on problems. Raises ``Misused``."""
    given = read_activity(root, options)
    year = given.book.years.best if given.book else _USUAL_YEAR
    worked = work_out(given.text, given.name, 1, given.book, year, given.reference, folder=given.folder, judged=False)
    print(_FORMATS[options.format](worked, given.reference))
    return FAILED if worked.problems else 0


COMMAND = Command(add_arguments, in_project(run))
