"""One hoop in a frame: what is in it and what is outside."""

from __future__ import annotations

from ...model.figures.sorting import SortHoop
from .lettering import LINE, block, broken, height, packed
from .pen import box, svg

_WIDE, _EDGE = 320, 4
_HOOP = 200


def draw(figure: SortHoop) -> str:
    """The hoop under its label, those outside below it."""
    label = broken(figure.label, _WIDE - 40)
    inside, outside = packed(figure.inside, 150), packed(figure.outside, _WIDE - 40)
    top = 12 + height(label)
    hoop = max(_HOOP, height(inside) + 2 * LINE)
    below = top + hoop + 14
    total = below + max(height(outside), LINE) + 10
    return svg(
        figure.NAME,
        _WIDE,
        total + _EDGE,
        box(_EDGE, _EDGE, _WIDE - 2 * _EDGE, total - _EDGE, "fig-line"),
        box((_WIDE - _HOOP) / 2, top, _HOOP, hoop, "fig-soft", _HOOP / 2),
        box((_WIDE - _HOOP) / 2, top, _HOOP, hoop, "fig-line", _HOOP / 2),
        block(160, LINE, label, kind="fig-text fig-mark-text"),
        block(160, top + (hoop - height(inside)) / 2 + LINE - 5, inside),
        block(160, below + LINE - 5, outside),
    )
