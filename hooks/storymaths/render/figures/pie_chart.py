"""A pie chart: slices from the top, clockwise, each with its label beside the circle."""

from __future__ import annotations

from math import cos, pi, sin

from ...model.figures.charts import PieChart
from .lettering import LINE, block, broken
from .pen import at, disc, line, path, svg

_WIDE, _X, _Y, _RADIUS, _BESIDE = 320, 160, 130, 84, 96
_FILLS = ("fig-fill", "fig-soft", "fig-line")


def draw(figure: PieChart) -> str:
    """The circle and its slices; an empty circle where nothing is drawn yet."""
    pieces = [disc(_X, _Y, _RADIUS)]
    before = 0.0
    for n, row in enumerate(figure.rows):
        part = float(row.amount / figure.total)
        if not part:
            continue
        after = before + part
        if part < 1:
            (x1, y1), (x2, y2) = _on(before, _RADIUS), _on(after, _RADIUS)
            course = f"M{_X} {_Y} L{at(x1)} {at(y1)} A{_RADIUS} {_RADIUS} 0 {int(part > 0.5)} 1 {at(x2)} {at(y2)} Z"
            pieces += [path(course, _FILLS[n % len(_FILLS)]), line(_X, _Y, x1, y1)]
        x, y = _on((before + after) / 2, _BESIDE)
        label = broken(row.label, _X - _RADIUS - 4)
        pieces.append(
            block(x, y + 5 - (LINE * (len(label) - 1) if y < _Y else 0), label, "start" if x >= _X else "end")
        )
        before = after
    return svg(figure.NAME, _WIDE, 2 * _Y, *pieces)


def _on(part: float, far: float) -> tuple[float, float]:
    """A point so far from the middle, after part of a turn clockwise from the top."""
    return _X + far * sin(2 * pi * part), _Y - far * cos(2 * pi * part)
