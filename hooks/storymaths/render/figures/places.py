"""A row of places from one end to the other, empty or with names in; equals stand one above the other."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator, Sequence

from ...model.figures.sorting import Places
from .pen import box, even, svg, words

_WIDE, _MARGIN, _LINE = 320, 10, 18
_LETTERS = 12
_NAMED_IN_A_ROW, _EMPTY_IN_A_ROW = 3, 4


def draw(figure: Places) -> str:
    """The places, in rows as long as each other if they can be, and what each end is."""
    places = figure.places
    most = _NAMED_IN_A_ROW if any(places) else _EMPTY_IN_A_ROW
    across = even(len(places), most)
    rows = [places[start : start + across] for start in range(0, len(places), across)]
    parts = [words(_MARGIN, 18, figure.first, 14, "start")]
    top = 28
    for row in rows:
        lines = [[line for name in place for line in textwrap.wrap(name, _LETTERS) or [""]] for place in row]
        high = max(34, max(len(place) for place in lines) * _LINE + 12)
        for index, place in enumerate(lines):
            parts += _place(index, top, high, place, (_WIDE - 2 * _MARGIN) // across)
        top += high + 10
    parts.append(words(_WIDE - _MARGIN, top + 8, figure.last, 14, "end"))
    return svg(figure.NAME, _WIDE, top + 16, *parts)


def _place(index: int, top: int, high: int, lines: Sequence[str], wide: int) -> Iterator[str]:
    left = _MARGIN + index * wide
    yield box(left + 2, top, wide - 4, high, "fig-soft", 4)
    for row, line in enumerate(lines):
        yield words(left + wide // 2, top + 20 + row * _LINE, line, 14)
