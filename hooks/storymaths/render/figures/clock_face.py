"""A clock face with its numerals, and its hands unless they are to be drawn by a pupil."""

from __future__ import annotations

from math import cos, pi, sin

from ...model.figures.measures import ClockFace
from .pen import disc, line, svg, words

_X, _Y, _RADIUS = 112, 138, 104
_ROMAN = "I II III IV V VI VII VIII IX X XI XII".split()


def draw(figure: ClockFace) -> str:
    """The face under its label."""
    pieces = [words(_X, 24, figure.label, 22), disc(_X, _Y, _RADIUS, "fig-soft fig-line")]
    for minute in range(60):
        inner = _RADIUS - (10 if minute % 5 == 0 else 5)
        pieces.append(line(*_at(minute / 60, inner), *_at(minute / 60, _RADIUS), "fig-tick"))
    for hour in range(1, 13):
        x, y = _at(hour / 12, _RADIUS - 24)
        text = _ROMAN[hour - 1] if figure.numerals == "roman" else str(hour)
        pieces.append(words(x, y + 7, text, 20))
    if figure.hands:
        minute = figure.hands.minute
        turn = (figure.hands.hour + minute / 60) / 12
        pieces += [
            line(_X, _Y, *_at(turn, 50), "fig-mark fig-hand-hour"),
            line(_X, _Y, *_at(minute / 60, 76), "fig-mark fig-hand-minute"),
        ]
    pieces.append(disc(_X, _Y, 5, "fig-fill"))
    return svg(figure.NAME, 2 * _X, 250, *pieces)


def _at(turn: float, away: float) -> tuple[float, float]:
    """A point so far from the middle, a fraction of a turn clockwise from the top."""
    return _X + away * sin(2 * pi * turn), _Y - away * cos(2 * pi * turn)
