"""The command ``tune``: numbers with which an activity comes out for a year."""

from __future__ import annotations

import argparse
from pathlib import Path

from ..activities.tune import tune, tuned_as_text
from ..model.fields import RECEPTION, YEARS
from .activity_file import add_file_arguments, read_activity
from .command import FAILED, Command, in_project


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Which activity, for which year, with how many answers."""
    parser.add_argument("--year", type=_year, required=True, metavar="N", help="Reception, or a year from 1 to 6")
    parser.add_argument(
        "--answers", type=_range, default=(1, 12), metavar="MIN..MAX", help="how many answers (default: 1..12)"
    )
    add_file_arguments(parser)


def _year(text: str) -> int:
    if text == "Reception":
        return RECEPTION
    if text.isdecimal() and int(text) in YEARS and int(text) != RECEPTION:
        return int(text)
    raise argparse.ArgumentTypeError(f"{text} is not Reception, 1, 2, 3, 4, 5 or 6")


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
