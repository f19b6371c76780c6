"""Two bars, one above the other, each made of parts as long as their numbers."""

from __future__ import annotations

from collections.abc import Sequence

from ...model.figures.amounts import TwoBars

_WIDE, _HIGH, _MARGIN, _GAP = 320, 92, 10, 12
_BAR = 30
_LETTER = 8


def draw(figure: TwoBars) -> str:
    """The bars to one scale, a number in each part that has room for it."""
    rows = (figure.top, figure.bottom)
    longest = max(1, *(sum(row) for row in rows))
    parts = [
        _bar(row, _MARGIN + index * (_BAR + _GAP), (_WIDE - 2 * _MARGIN) / longest) for index, row in enumerate(rows)
    ]
    return f'<svg viewBox="0 0 {_WIDE} {_HIGH}" role="presentation" class="figure figure-{figure.NAME}">{"".join(parts)}</svg>'


def _bar(row: Sequence[int], top: int, scale: float) -> str:
    parts, left = [], float(_MARGIN)
    for number in row:
        wide = number * scale
        parts.append(f'<rect class="fig-soft" x="{left:.1f}" y="{top}" width="{wide:.1f}" height="{_BAR}"/>')
        label = f"{number:,}"
        # A part too short for its number is left without: the line beside the bars has it.
        if len(label) * _LETTER < wide:
            parts.append(
                f'<text class="fig-text" x="{left + wide / 2:.1f}" y="{top + 20}" font-size="14" text-anchor="middle">'
                f"{label}</text>"
            )
        left += wide
    return "".join(parts)
