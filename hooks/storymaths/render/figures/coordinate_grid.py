"""Squared paper with two axes and numbers along them, points by their letters, and shapes."""

from __future__ import annotations

from ...model.figures.shapes import CoordinateGrid
from .pen import at, disc, line, path, svg, words

_WIDE, _LEFT, _TOP, _ROOM = 320, 30, 12, 278


def draw(figure: CoordinateGrid) -> str:
    """The squares, the axes and their numbers, then outlines and points."""
    least, most = (-figure.across if figure.four else 0), figure.across
    side = _ROOM / (most - least)
    foot = _TOP + _ROOM

    def x_of(number: int) -> float:
        return _LEFT + (number - least) * side

    def y_of(number: int) -> float:
        return foot - (number - least) * side

    lines = range(least, most + 1)
    pieces = [line(x_of(n), _TOP, x_of(n), foot, "fig-tick fig-faint") for n in lines]
    pieces += [line(_LEFT, y_of(n), _LEFT + _ROOM, y_of(n), "fig-tick fig-faint") for n in lines]
    pieces += [line(_LEFT, y_of(0), _LEFT + _ROOM, y_of(0)), line(x_of(0), _TOP, x_of(0), foot)]
    skip = next(skip for skip in (1, 2, 5, 10) if side * skip >= 20)
    numbers = [n for n in lines if n % skip == 0]
    shown = [f"{n}".replace("-", "−") for n in numbers]
    pieces += [words(x_of(n), foot + 18, text, 14) for n, text in zip(numbers, shown, strict=True)]
    pieces += [words(_LEFT - 6, y_of(n) + 5, text, 14, "end") for n, text in zip(numbers, shown, strict=True)]
    for corners in figure.outlines:
        course = " L".join(f"{at(x_of(x))} {at(y_of(y))}" for x, y in corners)
        pieces.append(path(f"M{course} Z"))
    for letter, x, y in figure.points:
        inside = min(max(x_of(x) + 12, 14), _WIDE - 12)
        pieces += [disc(x_of(x), y_of(y), 4, "fig-mark"), words(inside, max(y_of(y) - 7, 14), letter, 16)]
    return svg(figure.NAME, _WIDE, foot + 26, *pieces)
