"""Times along a line with a jump from each to the next. The spaces are even, whatever the jumps."""

from __future__ import annotations

import textwrap

from ...model.figures.measures import ClockJumps
from .pen import at, disc, line, path, svg, words_inside

_LEFT, _WIDE, _Y = 46, 228, 96
_LETTERS, _LINE = 14, 18


def draw(figure: ClockJumps) -> str:
    """The line, the times below it and the jumps above."""
    points = [textwrap.wrap(point, _LETTERS) for point in figure.points]
    gap = _WIDE / max(1, len(points) - 1)
    places = [_LEFT + gap * i for i in range(len(points))]
    tallest = max(map(len, points)) * _LINE
    pieces = [line(places[0] - 20, _Y, places[-1] + 20, _Y)]
    for i, (x, lines) in enumerate(zip(places, points, strict=True)):
        # Neighbours stand on two levels, so that their words do not run into each other.
        top = _Y + 26 + (tallest + 2) * (i % 2)
        pieces.append(disc(x, _Y, 4, "fig-mark"))
        pieces += [words_inside(x, top + _LINE * row, text, 320, 14) for row, text in enumerate(lines)]
    for i, text in enumerate(figure.jumps):
        left, right = places[i], places[i + 1]
        pieces.append(path(f"M{at(left)} 90 Q{at((left + right) / 2)} 50 {at(right)} 90", "fig-line fig-jump"))
        pieces.append(words_inside((left + right) / 2, 58 - 22 * (i % 2), text, 320, 14))
    return svg(figure.NAME, 320, _Y + 20 + tallest * 2, *pieces)
