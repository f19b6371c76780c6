"""A bar in equal parts, some of them shaded, with the whole above it and one part's worth inside."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from .pen import box, line, svg, words

_LEFT, _WIDE, _TOP, _HIGH = 8, 304, 42, 44


def draw(data: Mapping[str, Any]) -> str:
    """``parts`` and ``shaded`` are counts; ``whole`` is written above, ``each`` in the parts if there is room."""
    parts = int(data["parts"])
    width = _WIDE / parts
    pieces = [
        box(_LEFT + i * width, _TOP, width, _HIGH, "fig-fill" if i < int(data["shaded"]) else "fig-soft")
        for i in range(parts)
    ]
    pieces += [box(_LEFT + i * width, _TOP, width, _HIGH, "fig-line") for i in range(parts)]
    pieces += [
        line(_LEFT, 30, _LEFT + _WIDE, 30, "fig-tick"),
        line(_LEFT, 24, _LEFT, 36, "fig-tick"),
        line(_LEFT + _WIDE, 24, _LEFT + _WIDE, 36, "fig-tick"),
        words(_LEFT + _WIDE / 2, 20, str(data["whole"])),
    ]
    each = str(data.get("each", ""))
    if each and len(each) * 9 < width:
        pieces += [words(_LEFT + (i + 0.5) * width, _TOP + _HIGH / 2 + 6, each) for i in range(parts)]
    return svg("fraction-bar", 320, 96, *pieces)
