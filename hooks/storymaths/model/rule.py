"""A rule the content keeps: its permanent name, why it exists, and where that comes from."""

from __future__ import annotations

from dataclasses import dataclass

from .problem import Place, Problem
from .program_version import FIRST_VERSION

COMMON_PRACTICE = "Common practice in the trade; no single source."
HOUSE_RULE = "A rule of the program, storymaths."


@dataclass(frozen=True, slots=True)
class Rule:
    """What ``storymaths explain`` prints, and the maker of a rule's problems."""

    name: str
    says: str
    why: str
    source: str
    wrong: str
    """An example that breaks it."""
    right: str
    """The example mended."""
    since: str = FIRST_VERSION
    """The version of the program that brought it. A collection last checked with an earlier one is warned first."""

    def problem(self, place: Place, message: str, fix: str) -> Problem:
        """A breach of this rule at a place."""
        return Problem(place, self.name, message, fix, self.since)
