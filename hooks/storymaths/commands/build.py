"""The command ``build``: the whole site, in the folder ``site`` of the collection."""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

from ..build import Build
from ..model.problem import ProblemsFound
from ..pipeline import write_site
from ..publish.text_index import IndexFailed
from ..reading import read_and_check
from ..release.staging import Staging
from .command import FAILED, Command, in_project
from .terminal import as_text, count_problems, say_why

UNCHANGED = "Nothing was built; the site is as it was."


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """None."""


def run(root: Path, options: argparse.Namespace) -> int:
    """Builds it aside and puts it in place whole; 1 where something is wrong, and then the site is as it was."""
    reading = read_and_check(root)
    if reading.warnings:
        print(as_text((), reading.warnings), file=sys.stderr)
    out, why = root / "site", ""
    try:
        if reading.problems:
            raise ProblemsFound(reading.problems)
        _build(Build(root, reading), out)
    except ProblemsFound as found:
        why = f"{as_text(found.problems)}\n\n{count_problems(len(found.problems))}."
    except IndexFailed as failed:
        why = f"The site could not be built:\n{failed}"
    except OSError as error:
        why = say_why(error)
    print(f"{why} {UNCHANGED}" if why else f"The site is in {out}", file=sys.stderr if why else sys.stdout)
    return FAILED if why else 0


def _build(build: Build, out: Path) -> None:
    staging = Staging(out)
    try:
        write_site(build, staging.folder)
        staging.put_in_place()
    finally:
        staging.discard()


COMMAND = Command(add_arguments, in_project(run))
