"""A line graph: points over a scale that goes up the side, joined by straight lines."""

from __future__ import annotations

from fractions import Fraction

from ...model.figures.charts import LineGraph
from .chart_columns import LEFT, RIGHT, ROOM, TALL, TOP, WIDE, labels_below, scale_up
from .pen import at, disc, line, path, svg, words_inside

_MOST_MARKED = 12


def draw(figure: LineGraph) -> str:
    """The scale, the labels along the foot, the points and the lines between them."""
    foot = TOP + TALL
    first, last = figure.along[0], figure.along[-1]

    def x_of(number: Fraction) -> float:
        return LEFT + ROOM * float((number - first) / (last - first))

    def y_of(amount: Fraction | int) -> float:
        return foot - TALL * float(amount) / figure.top

    pieces = [words_inside(LEFT, 16, figure.thing, WIDE, 14)] if figure.thing else []
    pieces.append(scale_up(figure.top, figure.each))
    places = _along(figure)
    xs = [x_of(along) for along, _ in places]
    pieces += [line(x, TOP, x, foot + 5, "fig-tick fig-faint") for x in xs]
    named = [(x, label) for x, (_, label) in zip(xs, places, strict=True)]
    labels, tall = labels_below(named, ROOM / max(1, len(places) - 1), foot)
    pieces.append(labels)
    pieces += [line(LEFT, TOP, LEFT, foot), line(LEFT, foot, RIGHT, foot)]
    there = [(x_of(x), y_of(row.amount)) for x, row in zip(figure.along, figure.rows, strict=True)]
    if any(row.amount for row in figure.rows):
        pieces.append(path("M" + " L".join(f"{at(x)} {at(y)}" for x, y in there), "fig-mark"))
        pieces += [disc(x, y, 4, "fig-mark") for x, y in there]
    if figure.axis:
        pieces.append(words_inside((LEFT + RIGHT) / 2, tall + 12, figure.axis, WIDE, 14))
        tall += 20
    return svg(figure.NAME, WIDE, tall, *pieces)


def _along(figure: LineGraph) -> list[tuple[Fraction, str]]:
    """What is marked along the foot: the labels; of numbers that are few and whole, every one between them too."""
    first, last = figure.along[0], figure.along[-1]
    numbers = all(row.label == str(place) for row, place in zip(figure.rows, figure.along, strict=True))
    if numbers and last - first <= _MOST_MARKED:
        return [(Fraction(number), str(number)) for number in range(int(first), int(last) + 1)]
    return list(zip(figure.along, (row.label for row in figure.rows), strict=True))
