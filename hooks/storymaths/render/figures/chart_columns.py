"""What charts that stand up share: a scale up the left side, and labels along the foot."""

from __future__ import annotations

from collections.abc import Sequence

from .lettering import LINE, block, broken
from .pen import line, words

WIDE, LEFT, RIGHT, TOP, TALL = 320, 52, 304, 30, 190
ROOM = RIGHT - LEFT
_LETTER = 8.4


def scale_up(top: int, each: int, tall: float = TALL) -> str:
    """A scale from nought, with a faint line across at every mark, and a number at as many as there is room for."""
    foot = TOP + tall
    marks = range(0, top + 1, each)
    skip = next(skip for skip in (1, 2, 5, 10, 20, 50) if tall / max(1, len(marks) - 1) * skip >= 16 or skip == 50)
    pieces = []
    for n, mark in enumerate(marks):
        y = foot - tall * mark / top
        pieces.append(line(LEFT, y, RIGHT, y, "fig-tick fig-faint"))
        if n % skip == 0:
            pieces.append(words(LEFT - 6, y + 5, f"{mark:,}", 14, "end"))
    return "".join(pieces)


def labels_below(places: Sequence[tuple[float, str]], room: float, foot: float) -> tuple[str, float]:
    """Labels under their places, each with so much room, and where they end; where they would touch, every other one
    stands lower."""
    longest = max(len(word) for _, label in places for word in (label.split() or [""]))
    crowded = longest * _LETTER > room - 4
    labels = [broken(label, 2 * room - 12 if crowded else room) for _, label in places]
    deep = max(map(len, labels)) * LINE
    pieces = []
    for n, ((x, _), label) in enumerate(zip(places, labels, strict=True)):
        wide = max((len(part) for part in label), default=0) * _LETTER / 2
        lower = deep if crowded and n % 2 else 0
        pieces.append(block(min(max(x, wide), WIDE - wide), foot + 21 + lower, label))
    return "".join(pieces), foot + 12 + deep * (1 + crowded)
