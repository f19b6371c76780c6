"""What finds the place of a value in a file."""

from __future__ import annotations

from typing import Protocol

from .problem import Place
from .prose import Loc


class Locator(Protocol):
    """Finds the line and column of values; made by the parser, asked only when a problem needs it."""

    def place(self, loc: Loc, within: str = "", nth: int = 0) -> Place:
        """The place of a value, or of the ``nth`` time some words stand within it."""
