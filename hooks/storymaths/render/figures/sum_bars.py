"""Two bars of the same length, one over the other, cut into parts: what an equals sign says."""

from __future__ import annotations

from collections.abc import Sequence

from ...model.figures.amounts import BarPart, SumBars
from .pen import TEXT, box, line, svg, words

_LEFT, _LONG, _HIGH = 6, 308, 40
_LEAST, _LETTER = 32, 9
"""A part is never drawn narrower than its number, which can then be read: the widths are no longer to scale."""


def draw(figure: SumBars) -> str:
    """The bars, a stroke to write on in a gap."""
    top, bottom = _bar(figure.top, 6), _bar(figure.bottom, 6 + _HIGH)
    return svg(figure.NAME, 320, 2 * _HIGH + 12, *top, *bottom)


def _bar(parts: Sequence[BarPart], y: float) -> list[str]:
    drawn: list[str] = []
    x: float = _LEFT
    leasts = [max(_LEAST, 12 + _LETTER * len(label)) for label, _ in parts]
    for (label, _), width in zip(parts, widths([size for _, size in parts], _LONG, leasts), strict=True):
        gap = label == "?"
        drawn.append(box(x, y, width, _HIGH, "fig-line" if gap else "fig-soft"))
        if gap:
            drawn.append(line(x + width / 2 - 12, y + 28, x + width / 2 + 12, y + 28, "fig-mark"))
        else:
            drawn.append(words(x + width / 2, y + _HIGH / 2 + TEXT / 3, label))
        x += width
    return drawn


def widths(sizes: Sequence[int], long: float, leasts: Sequence[float]) -> list[float]:
    """Widths to scale that fill ``long``, each at least its least; what small parts gain, larger ones give."""
    total = sum(sizes) or 1
    squeeze = min(1.0, long / sum(leasts))
    fair = [(long * size / total, least * squeeze) for size, least in zip(sizes, leasts, strict=True)]
    lacking = sum(max(0.0, least - width) for width, least in fair)
    spare = sum(max(0.0, width - least) for width, least in fair) or 1
    return [least if width < least else width - (width - least) * lacking / spare for width, least in fair]
