"""A row of places from one end to the other, empty or with names in; equals stand one above the other."""

from __future__ import annotations

import textwrap
from collections.abc import Mapping, Sequence
from html import escape
from typing import Any

_WIDE, _MARGIN, _LINE = 320, 10, 18
_LETTERS = 12
_IN_A_ROW = 3


def draw(data: Mapping[str, Any]) -> str:
    """``places``: lists of names; ``first`` and ``last``: what each end is."""
    places: list[Sequence[str]] = data["places"]
    rows = [places[start : start + _IN_A_ROW] for start in range(0, len(places), _IN_A_ROW)]
    parts = [_text(_MARGIN, 18, data["first"], "start")]
    top = 28
    for row in rows:
        lines = [[line for name in place for line in textwrap.wrap(name, _LETTERS) or [""]] for place in row]
        high = max(34, max(len(place) for place in lines) * _LINE + 12)
        parts += [_place(index, top, high, place) for index, place in enumerate(lines)]
        top += high + 10
    parts.append(_text(_WIDE - _MARGIN, top + 8, data["last"], "end"))
    return (
        f'<svg viewBox="0 0 {_WIDE} {top + 16}" role="presentation" class="figure figure-places">{"".join(parts)}</svg>'
    )


def _place(index: int, top: int, high: int, lines: Sequence[str]) -> str:
    wide = (_WIDE - 2 * _MARGIN) // _IN_A_ROW
    left = _MARGIN + index * wide
    frame = f'<rect class="fig-soft" x="{left + 2}" y="{top}" width="{wide - 4}" height="{high}" rx="4"/>'
    words = (_text(left + wide // 2, top + 20 + row * _LINE, line, "middle") for row, line in enumerate(lines))
    return frame + "".join(words)


def _text(x: int, y: int, words: str, anchor: str) -> str:
    return f'<text class="fig-text" x="{x}" y="{y}" font-size="14" text-anchor="{anchor}">{escape(words)}</text>'
