"""One hoop in a frame: what is in it and what is outside."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from .lettering import LINE, block, broken, height, packed
from .pen import box, svg

_WIDE, _EDGE = 320, 4
_LEAST = 110


def draw(data: Mapping[str, Any]) -> str:
    """``labels``: one; ``in`` and ``out``: lists of names."""
    label = broken(str(data["labels"][0]), _WIDE - 40)
    inside, outside = packed(data["in"], 210), packed(data["out"], _WIDE - 40)
    top = 12 + height(label)
    hoop = max(_LEAST, height(inside) + 2 * LINE)
    below = top + hoop + 14
    total = below + max(height(outside), LINE) + 10
    return svg(
        "sort-hoop",
        _WIDE,
        total + _EDGE,
        box(_EDGE, _EDGE, _WIDE - 2 * _EDGE, total - _EDGE, "fig-line"),
        box(30, top, 260, hoop, "fig-soft", 50),
        box(30, top, 260, hoop, "fig-line", 50),
        block(160, LINE, label, kind="fig-text fig-mark-text"),
        block(160, top + (hoop - height(inside)) / 2 + LINE - 5, inside),
        block(160, below + LINE - 5, outside),
    )
