"""Two hoops that overlap, in a frame: what fits the first rule, both, the second, and neither."""

from __future__ import annotations

from ...model.figures.sorting import SortVenn
from .lettering import LINE, block, broken, height, packed
from .pen import box, svg

_WIDE, _EDGE, _LEFT, _HOOP, _SHIFT = 320, 4, 12, 196, 100
_LEAST, _ROUND = _HOOP, _HOOP / 2


def draw(figure: SortVenn) -> str:
    """The hoops under their labels, those that fit neither rule below them."""
    labels = [broken(label, 145) for label in figure.labels]
    middles = (_LEFT + _SHIFT / 2, 160.0, _WIDE - _LEFT - _SHIFT / 2)
    inside = [packed(names, 88) for names in (figure.first, figure.both, figure.second)]
    outside = packed(figure.neither, _WIDE - 30)
    top = 14 + max(map(height, labels))
    hoop = max(_LEAST, max(map(height, inside)) + 2.5 * LINE)
    below = top + hoop + 12
    total = below + max(height(outside), LINE) + 8
    hoops = [
        box(x, top, _HOOP, hoop, kind, _ROUND) for kind in ("fig-soft", "fig-line") for x in (_LEFT, _LEFT + _SHIFT)
    ]
    texts = [
        block(middle, top + (hoop - height(names)) / 2 + LINE - 5, names)
        for middle, names in zip(middles, inside, strict=True)
    ]
    return svg(
        figure.NAME,
        _WIDE,
        total + _EDGE,
        box(_EDGE, _EDGE, _WIDE - 2 * _EDGE, total - _EDGE, "fig-line"),
        *hoops,
        block(_LEFT, top - height(labels[0]) + LINE - 10, labels[0], "start", "fig-text fig-mark-text"),
        block(_WIDE - _LEFT, top - height(labels[1]) + LINE - 10, labels[1], "end", "fig-text fig-mark-text"),
        *texts,
        block(160, below + LINE - 5, outside),
    )
