"""Words set inside a space on a drawing: broken into lines that fit, never clipped, never made small."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence

from .pen import words

SIZE = 15
"""Height of the letters, in units of a drawing some 320 wide."""
LINE = 19
_LETTER = 8.4
"""A letter's width at that size, on the generous side."""


def broken(text: str, width: float) -> list[str]:
    """A text in lines that fit a width; words too long for a line are broken."""
    return textwrap.wrap(text, max(4, int(width / _LETTER))) or []


def packed(names: Sequence[str], width: float) -> list[str]:
    """Names in lines that fit a width: one a line while they are few, then side by side."""
    if len(names) <= 6:
        return [line for name in names for line in broken(name, width)]
    return broken(", ".join(names), width)


def block(x: float, y: float, lines: Sequence[str], anchor: str = "middle", kind: str = "fig-text") -> str:
    """Lines one under another, the first with its foot at ``y``."""
    return "".join(words(x, y + i * LINE, line, SIZE, anchor, kind) for i, line in enumerate(lines))


def height(lines: Sequence[str]) -> float:
    """How much space lines take from top to bottom."""
    return len(lines) * LINE
