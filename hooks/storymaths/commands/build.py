"""The command ``build``: the whole site, in the folder ``site`` of the collection."""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

from ..pipeline import start_build, write_site
from ..release.staging import Staging
from .command import FAILED, Command, in_project
from .terminal import as_text, count_problems


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """None."""


def run(root: Path, options: argparse.Namespace) -> int:
    """Builds it; what cannot be finished leaves the site as it was."""
    build = start_build(root)
    problems = build.reading.problems
    if problems:
        print(as_text(problems))
        print(f"{count_problems(len(problems))} in the content. Nothing was built; the site is as it was.")
        return FAILED
    if build.reading.warnings:
        print(as_text((), build.reading.warnings))
    staging = Staging(root / "site")
    try:
        staging.clear()
        write_site(build, staging.folder)
        staging.put_in_place()
    except OSError as error:
        print(f"The site could not be written ({error}); it is as it was.", file=sys.stderr)
        return FAILED
    finally:
        staging.discard()
    print(f"The site is in {staging.out}")
    return 0


COMMAND = Command(add_arguments, in_project(run))
