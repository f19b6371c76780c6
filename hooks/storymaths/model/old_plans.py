"""``site_data/old_plans.yaml``: what parts of old lesson plans are called, and how much such a file may hold."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal

from .fields import Strict, Text

PlanPart = Literal[
    "title", "year", "minutes", "objectives", "materials", "words", "questions", "step", "exit", "easier", "harder",
    "misconceptions", "look_for", "cautions", "kept",
]  # fmt: skip


class OldPlanLimits(Strict):
    """The most a file may hold."""

    file_bytes: int
    unpacked_bytes: int
    part_bytes: int
    """The text itself."""
    files: int
    """Inside a file that is a zip."""
    nested: int


class OldPlanWords(Strict):
    """The names of each part, in small letters, and the limits."""

    parts: Mapping[PlanPart, tuple[Text, ...]]
    passed_over: tuple[Text, ...]
    """Headings that are no title, without their numbers."""
    limits: OldPlanLimits
