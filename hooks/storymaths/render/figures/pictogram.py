"""A pictogram: a row of round pictures, with a part of one where the amount asks for it, and a key."""

from __future__ import annotations

from ...activities.saying import counted
from ...model.figures.charts import Pictogram
from .chart_rows import LEFT, ROOM, TOP, WIDE, label_at, labels, tall
from .lettering import LINE, block, broken, height
from .pen import at, box, disc, path, svg


def draw(figure: Pictogram) -> str:
    """The rows, the key below them."""
    rows, each = figure.rows, figure.each
    most = max(1.0, *(float(row.amount / each) for row in rows), figure.top / each)
    radius = min(13.0, ROOM / most / 2 - 1.5)
    top = float(TOP)
    pieces = []
    for row, label in zip(rows, labels(rows), strict=True):
        high = tall(label, 2 * radius + 14)
        pieces += [box(LEFT, top, WIDE - LEFT - 4, high, "fig-line"), label_at(label, top, high)]
        whole, quarters = divmod(round(row.amount * 4 / each), 4)
        for index in range(whole + bool(quarters)):
            x, y = LEFT + 6 + radius + index * (2 * radius + 2), top + high / 2
            pieces.append(disc(x, y, radius, "fig-fill") if index < whole else _part(x, y, radius, quarters))
        top += high
    if not figure.keyed:
        return svg(figure.NAME, WIDE, top + 4, *pieces)
    key = broken(f"stands for {counted(each, figure.thing)}", WIDE - 60)
    pieces += [disc(22, top + 22, 12, "fig-fill"), block(44, top + 27, key, "start")]
    return svg(figure.NAME, WIDE, top + 20 + max(height(key), LINE), *pieces)


def _part(x: float, y: float, radius: float, quarters: int) -> str:
    """So many quarters of a picture, from its top towards the left."""
    end = {1: (x - radius, y), 2: (x, y + radius), 3: (x + radius, y)}[quarters]
    to_middle = "" if quarters == 2 else f" L{at(x)} {at(y)}"
    arc = f"A{at(radius)} {at(radius)} 0 {int(quarters == 3)} 0 {at(end[0])} {at(end[1])}"
    return path(f"M{at(x)} {at(y - radius)} {arc}{to_middle} Z", "fig-fill")
