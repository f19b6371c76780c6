"""The command ``tune``: numbers with which an activity comes out for a year."""

from __future__ import annotations

import argparse
from pathlib import Path

from ..activities.tune import tune, tuned_as_text
from .activity_file import add_file_arguments, read_activity
from .command import FAILED, Command, in_project
from .year_argument import SAYS, read_year


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Which activity, for which year, with how many answers."""
    parser.add_argument("--year", type=read_year, required=True, metavar="N", help=SAYS)
    parser.add_argument(
        "--answers", type=_range, default=(1, 12), metavar="MIN..MAX", help="how many answers (default: 1..12)"
    )
    add_file_arguments(parser)


def _range(text: str) -> tuple[int, int]:
    few, _, many = text.partition("..")
    if few.isdecimal() and (many or few).isdecimal() and int(few) <= int(many or few):
        return int(few), int(many or few)
    raise argparse.ArgumentTypeError(f"{text} is not a number of answers such as 3, or 1..6")


def run(root: Path, options: argparse.Namespace) -> int:
    """Prints the numbers it proposes; 1 where there are none. Raises ``Misused``."""
    given = read_activity(root, options)
    tuned = tune(given.text, options.year, options.answers, given.book, given.reference)
    print(tuned_as_text(tuned))
    return FAILED if tuned.problems else 0


COMMAND = Command(add_arguments, in_project(run))
