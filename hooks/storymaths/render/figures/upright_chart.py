"""A bar chart or a block diagram whose columns stand up, over labels along the foot and beside a scale."""

from __future__ import annotations

from ...model.figures.charts import BarChart, BlockDiagram
from .chart_columns import LEFT, RIGHT, ROOM, TALL, TOP, labels_below, scale_up
from .pen import box, line, svg, words

_WIDE, _BLOCK, _BROADEST = 320, 26.0, 44.0
_FILLS = ("fig-fill", "fig-soft", "fig-line")


def draw_blocks(figure: BlockDiagram) -> str:
    """A block for each thing, one on another."""
    high = min(_BLOCK, TALL / figure.top)
    foot, room = TOP + high * figure.top, ROOM / len(figure.rows)
    broad = min(room - 4, max(high, _BLOCK))
    pieces = [scale_up(figure.top, 1, high * figure.top)]
    middles = [LEFT + room * (n + 0.5) for n in range(len(figure.rows))]
    for x, row in zip(middles, figure.rows, strict=True):
        pieces += [box(x - broad / 2, foot - high * (n + 1), broad, high, "fig-fill") for n in range(int(row.amount))]
    places = [(x, row.label) for x, row in zip(middles, figure.rows, strict=True)]
    labels, end = labels_below(places, room, foot)
    return svg(figure.NAME, _WIDE, end, *pieces, *_axes(foot), labels)


def draw_bars(figure: BarChart) -> str:
    """The bars, one or several to a label, and with several a key."""
    wide = max(1, len(figure.columns))
    groups = [figure.rows[n : n + wide] for n in range(0, len(figure.rows), wide)]
    foot, room = float(TOP + TALL), ROOM / len(groups)
    broad = min(_BROADEST, room * 0.7 / wide)
    pieces, places = [scale_up(figure.top, figure.each)], []
    for n, group in enumerate(groups):
        middle = LEFT + room * (n + 0.5)
        suffix = f", {figure.columns[0]}" if figure.columns else ""
        places.append((middle, group[0].label.removesuffix(suffix)))
        for place, row in enumerate(group):
            high = TALL * float(row.amount / figure.top)
            if high:
                left = middle + (place - wide / 2) * broad
                pieces.append(box(left, foot - high, broad, high, _FILLS[place]))
    labels, end = labels_below(places, room, foot)
    for n, column in enumerate(figure.columns):
        pieces += [box(16, end + 12 + 24 * n, 16, 16, _FILLS[n]), words(40, end + 25 + 24 * n, column, 15, "start")]
    return svg(figure.NAME, _WIDE, end + (16 + 24 * wide if figure.columns else 0), *pieces, *_axes(foot), labels)


def _axes(foot: float) -> tuple[str, str]:
    return line(LEFT, TOP, LEFT, foot), line(LEFT, foot, RIGHT, foot)
