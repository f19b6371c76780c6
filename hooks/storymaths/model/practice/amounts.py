"""Runs of amounts, as the files in ``site_data/practice/`` name them."""

from __future__ import annotations

from ..fields import Count, Strict


class Amounts(Strict):
    """Amounts from ``first`` on, each ``step`` more or less than the one before, to ``last``."""

    first: Count
    last: Count
    step: Count

    def all(self) -> range:
        """The amounts, in order."""
        down = self.last < self.first
        return range(self.first, self.last + (-1 if down else 1), -self.step if down else self.step)
