"""Two hoops that overlap, in a frame: what fits the first rule, both, the second, and neither."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from .lettering import LINE, block, broken, height, packed
from .pen import box, svg

_WIDE, _EDGE, _LEFT, _HOOP, _SHIFT = 320, 4, 12, 196, 100
_LEAST, _ROUND = 140, 56


def draw(data: Mapping[str, Any]) -> str:
    """``labels``: two; ``first``, ``both``, ``second``, ``neither``: lists of names."""
    labels = [broken(str(label), 145) for label in data["labels"]]
    middles = {"first": _LEFT + _SHIFT / 2, "both": 160.0, "second": _WIDE - _LEFT - _SHIFT / 2}
    inside = {region: packed(data[region], 88) for region in middles}
    outside = packed(data["neither"], _WIDE - 30)
    top = 14 + max(map(height, labels))
    hoop = max(_LEAST, max(map(height, inside.values())) + 2.5 * LINE)
    below = top + hoop + 12
    total = below + max(height(outside), LINE) + 8
    hoops = [
        box(x, top, _HOOP, hoop, kind, _ROUND) for kind in ("fig-soft", "fig-line") for x in (_LEFT, _LEFT + _SHIFT)
    ]
    texts = [
        block(middle, top + (hoop - height(inside[region])) / 2 + LINE - 5, inside[region])
        for region, middle in middles.items()
    ]
    return svg(
        "sort-venn",
        _WIDE,
        total + _EDGE,
        box(_EDGE, _EDGE, _WIDE - 2 * _EDGE, total - _EDGE, "fig-line"),
        *hoops,
        block(_LEFT, top - height(labels[0]) + LINE - 10, labels[0], "start", "fig-text fig-mark-text"),
        block(_WIDE - _LEFT, top - height(labels[1]) + LINE - 10, labels[1], "end", "fig-text fig-mark-text"),
        *texts,
        block(160, below + LINE - 5, outside),
    )
