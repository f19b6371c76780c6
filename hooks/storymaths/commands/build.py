"""The command ``build``: the whole site, in the folder ``site`` of the collection."""

from __future__ import annotations

import argparse
from pathlib import Path

from .command import Command, in_project
from .frame import run_frame


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """None."""


def run(root: Path, options: argparse.Namespace) -> int:
    """Builds it; a problem leaves the site as it was."""
    return run_frame(root, "build")


COMMAND = Command(add_arguments, in_project(run))
