"""Three rings that overlap, in a frame: each name where the rules it fits cross, and those that fit none below."""

from __future__ import annotations

from ...model.figures.sorting import SortThreeRings
from .lettering import LINE, block, broken, height, packed
from .pen import at, box, path, svg

_WIDE, _EDGE, _RADIUS = 320, 4, 105.0
_MIDDLES = ((115.0, 0.0), (205.0, 0.0), (160.0, 78.0))
"""The middles of the rings, down from the first two."""
_ROOMS = (
    *((160.0, 26.0, 84.0, 60.0), (160.0, -58.0, 76.0, 60.0), (87.0, 68.0, 68.0, 60.0), (233.0, 68.0, 68.0, 60.0)),
    *((57.0, -20.0, 78.0, 90.0), (263.0, -20.0, 78.0, 90.0), (160.0, 137.0, 120.0, 62.0)),
)
"""Where what fits all, two or one of the rules stands: the middle, and how wide and high there is room."""


def draw(figure: SortThreeRings) -> str:
    """The first two rings under their labels, the third over its own; taller where names ask for it."""
    labels = [broken(label, wide) for label, wide in zip(figure.labels, (145, 145, _WIDE - 30), strict=True)]
    inside = [packed(names, room[2]) for names, room in zip(figure.places[:7], _ROOMS, strict=True)]
    outside = packed(figure.places[7], _WIDE - 30)
    tall = max(1.0, *(height(lines) / room[3] for lines, room in zip(inside, _ROOMS, strict=True)))
    top = 14 + max(map(height, labels[:2]))

    def down(far: float) -> float:
        return top + (far + _RADIUS) * tall

    foot = down(_MIDDLES[2][1] + _RADIUS)
    below = foot + 8 + height(labels[2]) + 6
    total = below + max(height(outside), LINE) + 8
    rings = [path(_ring(x, down(y), _RADIUS * tall), kind) for kind in ("fig-soft", "fig-line") for x, y in _MIDDLES]
    texts = [
        block(x, down(y) - height(lines) / 2 + LINE - 5, lines)
        for lines, (x, y, _, _) in zip(inside, _ROOMS, strict=True)
    ]
    return svg(
        figure.NAME,
        _WIDE,
        total + _EDGE,
        box(_EDGE, _EDGE, _WIDE - 2 * _EDGE, total - _EDGE, "fig-line"),
        *rings,
        block(12, top - height(labels[0]) + LINE - 10, labels[0], "start", "fig-text fig-mark-text"),
        block(_WIDE - 12, top - height(labels[1]) + LINE - 10, labels[1], "end", "fig-text fig-mark-text"),
        block(_WIDE / 2, foot + LINE, labels[2], kind="fig-text fig-mark-text"),
        *texts,
        block(_WIDE / 2, below + LINE - 5, outside),
    )


def _ring(x: float, y: float, tall: float) -> str:
    arc = f"a{at(_RADIUS)} {at(tall)} 0 1 0"
    return f"M{at(x - _RADIUS)} {at(y)} {arc} {at(2 * _RADIUS)} 0 {arc} {at(-2 * _RADIUS)} 0 Z"
