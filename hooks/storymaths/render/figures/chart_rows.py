"""What charts share: labels down the left side, a scale along the foot, and room for the rows between."""

from __future__ import annotations

from collections.abc import Sequence

from ...model.figures.charts import ChartRow
from .lettering import LINE, block, broken, height
from .pen import line, words

WIDE, LEFT, RIGHT, TOP = 320, 104, 300, 8
ROOM = RIGHT - LEFT


def labels(rows: Sequence[ChartRow]) -> list[list[str]]:
    """The label of each row, in lines that fit beside it."""
    return [broken(row.label, LEFT - 12) for row in rows]


def tall(label: Sequence[str], least: float) -> float:
    """How tall a row must be for its label."""
    return max(least, height(label) + 8)


def label_at(label: Sequence[str], top: float, tall_: float) -> str:
    """A label, level with the middle of its row."""
    return block(LEFT - 8, top + (tall_ - height(label)) / 2 + LINE - 5, label, "end")


def scale(foot: float, top: int, each: int) -> str:
    """A scale from nought along the foot, with a number at every mark, or at every other where they would touch."""
    marks = range(0, top + each, each)
    pieces = [line(LEFT, foot, RIGHT, foot, "fig-line")]
    apart = ROOM / max(1, len(marks) - 1)
    skip = next(skip for skip in (1, 2, 5, 10, 20, 50) if apart * skip >= 9 * len(f"{top:,}") + 4 or skip == 50)
    for index, mark in enumerate(marks):
        x = LEFT + ROOM * mark / top
        pieces.append(line(x, foot, x, foot + 6, "fig-tick"))
        if index % skip == 0:
            pieces.append(words(x, foot + 22, f"{mark:,}", 14))
    return "".join(pieces)
