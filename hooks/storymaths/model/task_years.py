"""The year from which each task of a kind of activity makes sense."""

from __future__ import annotations

from collections.abc import Mapping

from .fields import Strict, Text, Year


class TaskYears(Strict):
    """``site_data/tasks.yaml``."""

    source: Text
    kinds: Mapping[str, Mapping[str, Year]]
    """By kind and task; what is not named makes sense from the first year on."""

    def first_year(self, kind: str, task: str) -> int:
        """The first year a task makes sense in."""
        return self.kinds.get(kind, {}).get(task, 0)
