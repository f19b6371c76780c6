"""The command ``licences``: what the program stands on, with versions and licences."""

from __future__ import annotations

import argparse

from ..publish.bill_of_materials import bill_of_materials
from ..publish.stands_on import packages
from .command import Command, Misused


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """In which form."""
    parser.add_argument("--cyclonedx", action="store_true", help="as a bill of materials, CycloneDX 1.6 in JSON")


def run(options: argparse.Namespace) -> int:
    """Lists every package that is installed for the program. Raises ``Misused`` where the program is not installed."""
    found = packages()
    if not found:
        raise Misused(
            "storymaths is run from its folder and not installed, so nothing says what it needs: pip install it."
        )
    if options.cyclonedx:
        print(bill_of_materials(found), end="")
        return 0
    names, versions = max(len(one.name) for one in found), max(len(one.version) for one in found)
    for one in found:
        print(f"{one.name:{names}}  {one.version:{versions}}  {one.licence}")
    return 0


COMMAND = Command(add_arguments, run)
