"""A line cut into equal parts, with numbers placed on it and arrows at marks to be read."""

from __future__ import annotations

from ...model.figures.fractions import FractionLine
from .pen import arrow_down, disc, line, svg, words_inside

_LEFT, _WIDE, _Y = 24, 272, 66


def draw(figure: FractionLine) -> str:
    """The line, the numbers placed on it above and its ends below."""
    parts = figure.parts
    pieces = [line(_LEFT, _Y, _LEFT + _WIDE, _Y)]
    for i in range(parts + 1):
        x, tall = _LEFT + _WIDE * i / parts, 12 if i in (0, parts) else 8
        pieces.append(line(x, _Y - tall, x, _Y + tall, "fig-tick"))
    pieces += [
        words_inside(_LEFT, _Y + 30, figure.start, 320),
        words_inside(_LEFT + _WIDE, _Y + 30, figure.end, 320),
    ]
    pieces += [arrow_down(_LEFT + _WIDE * mark / parts, _Y - 13) for mark in figure.arrows]
    # Neighbours stand on different heights, so that their words do not run into each other.
    ordered = sorted(figure.places, key=lambda place: place.at)
    for i, (text, along) in enumerate(ordered):
        x = float(_LEFT + _WIDE * along)
        high = _Y - 18 - 18 * (i % 3)
        pieces += [
            line(x, high + 3, x, _Y, "fig-mark"),
            disc(x, _Y, 4, "fig-mark"),
            words_inside(x, high, text, 320),
        ]
    return svg(figure.NAME, 320, 104, *pieces)
