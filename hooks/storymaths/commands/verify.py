"""The command ``verify``: whether a pack is whole."""

from __future__ import annotations

import argparse
from pathlib import Path

from ..publish.pack.verify import NotWhole, verify
from .command import FAILED, Command, Misused
from .terminal import in_megabytes

_SHOWN = 20


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Which pack."""
    parser.add_argument("pack", type=Path, metavar="PACK", help="the file of the pack")


def run(options: argparse.Namespace) -> int:
    """Says whether it is whole; 0 if it is, 1 if it is not. Raises ``Misused`` where there is none."""
    try:
        size = options.pack.stat().st_size
        found = verify(options.pack)
    except NotWhole as error:
        print(f"{options.pack} is not whole:")
        for fault in error.faults[:_SHOWN]:
            print(f"  {fault}")
        if len(error.faults) > _SHOWN:
            print(f"  and {len(error.faults) - _SHOWN} more")
        return FAILED
    except OSError as error:
        raise Misused(f"{options.pack} cannot be opened: {error.strerror or 'it is not a plain file'}.") from None
    print(
        f"{options.pack} is whole: {found.series} {found.version}, {len(found.sums) + 1} files, {in_megabytes(size)}."
    )
    return 0


COMMAND = Command(add_arguments, run)
