"""Versions of the program, as a collection says which of them last checked it."""

from __future__ import annotations

from typing import Annotated

from pydantic import StringConstraints

VERSION = "0.2.0"
"""Of this program: its wheel takes it from here."""
PROGRAM_VERSION = r"^\d{1,4}\.\d{1,4}\.\d{1,4}$"
"""The form of the next, which messages put into words."""
ProgramVersion = Annotated[str, StringConstraints(pattern=PROGRAM_VERSION, strict=True)]
FIRST_VERSION = "0.1.0"
"""What a collection was made with that does not say."""
WARNED = (
    "These rules are newer than the version this collection was last checked with, so they stop nothing yet. "
    "They will from the day `storymaths upgrade --write` finds nothing left to mend and notes its version in site_data/site.yaml."
)
"""What is said once above all warnings."""


def is_newer(version: str, than: str) -> bool:
    """Whether a version came after another."""
    return _order(version) > _order(than)


def _order(version: str) -> tuple[int, ...]:
    return tuple(int(part) for part in version.split("."))
