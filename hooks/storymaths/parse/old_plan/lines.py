"""What an old plan holds, whatever wrote it: lines and tables, in order."""

from __future__ import annotations

from dataclasses import dataclass


class Unreadable(Exception):
    """The file cannot be read, or must not be; the message says why, and what to do."""


@dataclass(frozen=True, slots=True)
class PlanLine:
    """A paragraph: a heading by its style, by being bold throughout, an item of a list, or none of these."""

    text: str
    heading: bool = False
    bold: bool = False
    depth: int = 0
    """Of the list it is an item of, from 1; 0 for none."""
    numbered: bool = False


@dataclass(frozen=True, slots=True)
class PlanTable:
    """A table: in each cell its lines, those of a table within it too."""

    rows: tuple[tuple[tuple[PlanLine, ...], ...], ...]


PlanBlock = PlanLine | PlanTable
