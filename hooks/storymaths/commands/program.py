"""The ``storymaths`` program: finds the command that is asked for, runs it, and leaves."""

from __future__ import annotations

import argparse
import io
import os
import sys
from collections.abc import Sequence

from ..model.program_version import VERSION
from .command import FAILED, Misused
from .table import COMMANDS, load

_STOPPED = 130
"""What a shell says of a program that was stopped with Ctrl and C."""


def run() -> None:
    """The program. It leaves at once: taking apart all that was read would cost a tenth of the time."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="backslashreplace")  # an old terminal has no “ or …
    try:
        code = main()
        sys.stdout.flush()
    except BrokenPipeError:  # whoever reads has read enough
        os._exit(FAILED)
    except KeyboardInterrupt:
        print("\nStopped.", file=sys.stderr)
        code = _STOPPED
    sys.stderr.flush()
    os._exit(code)


def main(arguments: Sequence[str] | None = None) -> int:
    """Runs a command; gives 0 when all is well, 1 on problems, 2 when it is misused."""
    given = sys.argv[1:] if arguments is None else arguments
    options = _parser(given).parse_args(given)
    try:
        return load(options.command).run(options)
    except Misused as error:
        print(error, file=sys.stderr)
        return error.code


def _parser(given: Sequence[str]) -> argparse.ArgumentParser:
    """Knows every command by its name, and the arguments of the one that is asked for."""
    parser = argparse.ArgumentParser(prog="storymaths", description="Maths lessons taught from picture books.")
    parser.add_argument("--version", action="version", version=VERSION)
    asked = given[0] if given else ""
    commands = parser.add_subparsers(dest="command", required=True, metavar="COMMAND")
    for name, says in COMMANDS.items():
        command = commands.add_parser(name, help=says)
        if name == asked:
            load(name).add_arguments(command)
    return parser
