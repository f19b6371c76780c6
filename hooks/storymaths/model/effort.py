"""How much a search may look at before it is given up: counted in steps, so that it ends alike on every machine."""

from __future__ import annotations


class GivenUp(Exception):
    """A search that would look at more than it may."""


class Effort:
    """The steps that are left for one activity: a step is about ten microseconds of work."""

    def __init__(self, most: int = 1_000_000_000) -> None:
        self.most = most
        self._left = most

    def spend(self, steps: int) -> None:
        """Takes steps away. Raises ``GivenUp`` where there are no more."""
        self._left -= steps
        if self._left < 0:
            raise GivenUp
