"""A line graph: points over a scale that goes up the side, joined by straight lines."""

from __future__ import annotations

from fractions import Fraction

from ...model.figures.charts import LineGraph
from .lettering import LINE, block, broken
from .pen import at, disc, line, path, svg, words, words_inside

_WIDE, _LEFT, _RIGHT, _TOP, _TALL = 320, 52, 304, 30, 190
_MOST_MARKED = 12


def draw(figure: LineGraph) -> str:
    """The scale, the labels along the foot, the points and the lines between them."""
    foot, room = _TOP + _TALL, _RIGHT - _LEFT
    first, last = figure.along[0], figure.along[-1]

    def x_of(number: Fraction) -> float:
        return _LEFT + room * float((number - first) / (last - first))

    def y_of(amount: Fraction | int) -> float:
        return foot - _TALL * float(amount) / figure.top

    pieces = [words_inside(_LEFT, 16, figure.thing, _WIDE, 14)] if figure.thing else []
    marks = range(0, figure.top + 1, figure.each)
    skip = next(skip for skip in (1, 2, 5, 10, 20, 50) if _TALL / max(1, len(marks) - 1) * skip >= 16 or skip == 50)
    for n, mark in enumerate(marks):
        pieces.append(line(_LEFT, y_of(mark), _RIGHT, y_of(mark), "fig-tick fig-faint"))
        if n % skip == 0:
            pieces.append(words(_LEFT - 6, y_of(mark) + 5, f"{mark:,}", 14, "end"))
    places = _along(figure)
    labels = [broken(label, room / max(1, len(places) - 1)) for _, label in places]
    # Where they would touch, every other one stands lower.
    longest = max((len(part) for label in labels for part in label), default=0)
    crowded = longest * 8.4 > room / max(1, len(places) - 1) - 10
    deep = max(map(len, labels)) * LINE
    for n, ((along, _), label) in enumerate(zip(places, labels, strict=True)):
        x = x_of(along)
        pieces.append(line(x, _TOP, x, foot + 5, "fig-tick fig-faint"))
        wide = max((len(part) for part in label), default=0) * 8.4 / 2
        lower = deep if crowded and n % 2 else 0
        pieces.append(block(min(max(x, wide), _WIDE - wide), foot + 21 + lower, label))
    pieces += [line(_LEFT, _TOP, _LEFT, foot), line(_LEFT, foot, _RIGHT, foot)]
    there = [(x_of(x), y_of(row.amount)) for x, row in zip(figure.along, figure.rows, strict=True)]
    if any(row.amount for row in figure.rows):
        pieces.append(path("M" + " L".join(f"{at(x)} {at(y)}" for x, y in there), "fig-mark"))
        pieces += [disc(x, y, 4, "fig-mark") for x, y in there]
    tall = foot + 12 + deep * (1 + crowded)
    if figure.axis:
        pieces.append(words_inside((_LEFT + _RIGHT) / 2, tall + 12, figure.axis, _WIDE, 14))
        tall += 20
    return svg(figure.NAME, _WIDE, tall, *pieces)


def _along(figure: LineGraph) -> list[tuple[Fraction, str]]:
    """What is marked along the foot: the labels; of numbers that are few and whole, every one between them too."""
    first, last = figure.along[0], figure.along[-1]
    numbers = all(row.label == str(place) for row, place in zip(figure.rows, figure.along, strict=True))
    if numbers and last - first <= _MOST_MARKED:
        return [(Fraction(number), str(number)) for number in range(int(first), int(last) + 1)]
    return list(zip(figure.along, (row.label for row in figure.rows), strict=True))
