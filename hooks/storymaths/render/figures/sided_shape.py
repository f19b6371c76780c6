"""A shape by the lengths of its sides, drawn with its corners on a circle, each length beside its side."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise
from math import asin, cos, hypot, pi, sin

from ...model.figures.shapes import SidedShape
from .pen import at, path, svg, words_inside

_WIDE, _ROOM, _EDGE, _TEXT = 320, 190, 30, 18
_HALVINGS = 60
Point = tuple[float, float]


def draw(figure: SidedShape) -> str:
    """The shape on a level side, as large as there is room for."""
    corners = _corners(list(map(float, figure.sides)))
    across, down = ([point[axis] for point in corners] for axis in (0, 1))
    grow = _ROOM / max(max(across) - min(across), max(down) - min(down))
    left = (_WIDE - (max(across) - min(across)) * grow) / 2 - min(across) * grow
    top = _EDGE - min(down) * grow
    placed = [(left + x * grow, top + y * grow) for x, y in corners]
    tall = (max(down) - min(down)) * grow + 2 * _EDGE
    outline = path("M" + " L".join(f"{at(x)} {at(y)}" for x, y in placed) + " Z", "fig-soft")
    return svg(figure.NAME, _WIDE, tall, outline, *_labels(placed, figure.labels))


def _labels(corners: Sequence[Point], labels: Sequence[str]) -> Iterator[str]:
    """Each outside the middle of its side."""
    for (one, other), label in zip(pairwise([*corners, corners[0]]), labels, strict=True):
        if label:
            far = hypot(other[0] - one[0], other[1] - one[1])
            out = ((other[1] - one[1]) / far, (one[0] - other[0]) / far)
            wide = 4.5 * len(label)  # half of it, beside an upright side
            x = (one[0] + other[0]) / 2 + out[0] * (10 + wide)
            y = (one[1] + other[1]) / 2 + out[1] * 16
            yield words_inside(x, y + 6, label, _WIDE, _TEXT)


def _corners(sides: Sequence[float]) -> list[Point]:
    """The corners on a circle, going round with the clock from the left of the first side, which lies level on top.

    The sides' angles at the middle make one turn; the longest side's is what the others leave, where that is more
    than half. The circle that fits is found by halving.
    """
    longest = max(sides)
    least, most = longest / 2, sum(sides) * len(sides) * 1_000

    def around(radius: float) -> list[float]:
        return [2 * asin(min(1.0, side / 2 / radius)) for side in sides]

    inside = sum(around(least)) >= 2 * pi  # whether the middle lies within the shape
    for _ in range(_HALVINGS):
        middle = (least + most) / 2
        angles = around(middle)
        others = sum(angles) - max(angles)
        short = sum(angles) > 2 * pi if inside else others < max(angles)
        least, most = (middle, most) if short else (least, middle)
    angles = around(most)
    if not inside:
        angles[sides.index(longest)] = 2 * pi - (sum(angles) - max(angles))
    turn = pi / 2 + angles[0] / 2
    corners = []
    for angle in angles:
        corners.append((most * cos(turn), -most * sin(turn)))
        turn -= angle
    return corners
