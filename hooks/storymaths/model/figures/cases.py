"""Drawings of every case of a statement, marked where it holds and where it does not."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar, Literal

Mark = Literal["yes", "no", ""]
"""Whether the statement holds; empty where it says nothing."""


@dataclass(frozen=True, slots=True)
class CaseGrid:
    """Every pair of numbers as a square of a grid."""

    NAME: ClassVar = "case-grid"
    letters: tuple[str, str]
    """For the numbers down, then for those across."""
    across: tuple[int, ...]
    down: tuple[int, ...]
    cells: tuple[tuple[Mark, ...], ...]
    """Row by row."""


@dataclass(frozen=True, slots=True)
class CaseStrip:
    """Numbers in rows of ten or fewer, each with its mark."""

    NAME: ClassVar = "case-strip"
    numbers: tuple[tuple[int, ...], ...]
    cells: tuple[tuple[Mark, ...], ...]
