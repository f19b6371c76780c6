"""What a command is: its arguments, what it does, and how it says that it was misused."""

from __future__ import annotations

import argparse
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from .project import find_root

FAILED, MISUSED = 1, 2
"""What a command leaves with on problems, and when it was asked for what cannot be; 0 when all is well."""


class Misused(Exception):
    """The command was asked for what is not there, or cannot do what it was asked; the message is for people."""

    def __init__(self, message: str, code: int = MISUSED) -> None:
        super().__init__(message)
        self.code = code
        """What the command leaves with."""


@dataclass(frozen=True, slots=True)
class Command:
    """A command of the program."""

    add_arguments: Callable[[argparse.ArgumentParser], None]
    run: Callable[[argparse.Namespace], int]
    """Gives what the program leaves with. Raises ``Misused``."""


def in_project(run: Callable[[Path, argparse.Namespace], int]) -> Callable[[argparse.Namespace], int]:
    """A command that is run in the project it is called from; raises ``Misused`` where there is none."""

    def run_here(options: argparse.Namespace) -> int:
        root = find_root(Path.cwd())
        if root is None:
            raise Misused("No project here: there is no site_data folder beside a content folder, here or above.")
        return run(root, options)

    return run_here
