"""A scale with marks, numbers at some of them, and arrows to be read: a ruler, a jug or a thermometer."""

from __future__ import annotations

from collections.abc import Mapping

from ...model.figures.measures import MeasureScale
from .pen import arrow_down, at, box, disc, line, path, svg, words, words_inside

_LEFT, _WIDE, _TOP = 24, 272, 58
_BOTTOM, _HIGH = 270, 240
_NUMBER = 15
"""How large the numbers and the unit are: on a class screen beside a board no smaller than they may be."""
_LETTER = 8.5
"""About how wide one of their figures is."""


def draw(figure: MeasureScale) -> str:
    """The scale with its numbers, as many as fit, and its arrows."""
    numbered = dict(figure.labels)
    if figure.form == "ruler":
        return svg(figure.NAME, 320, 130, *_ruler(figure, numbered))
    return svg(figure.NAME, 320, 300, *_vessel(figure), *_upright(figure, numbered))


def _ruler(figure: MeasureScale, numbered: Mapping[int, str]) -> list[str]:
    parts = figure.parts
    pieces = [box(_LEFT - 14, _TOP, _WIDE + 28, 46, "fig-soft fig-line", 4)]
    for mark in range(parts + 1):
        x = _LEFT + _WIDE * mark / parts
        pieces.append(line(x, _TOP, x, _TOP + (18 if mark in numbered else 10), "fig-tick"))
    for mark in _apart(numbered, _WIDE / parts, across=True):
        pieces.append(words_inside(_LEFT + _WIDE * mark / parts, _TOP + 36, numbered[mark], 320, _NUMBER))
    pieces.append(words(_LEFT + _WIDE + 14, _TOP + 64, figure.unit, _NUMBER, "end"))
    for name, along in figure.pointers:
        x = float(_LEFT + _WIDE * along)
        pieces += [arrow_down(x, _TOP - 2, 24), words(x, _TOP - 30, name)]
    return pieces


def _vessel(figure: MeasureScale) -> list[str]:
    """The jug or thermometer, filled to the highest arrow."""
    full = _HIGH * max((float(along) for _, along in figure.pointers), default=0.0)
    if figure.form == "thermometer":
        return [
            box(146, 18, 28, 262, "fig-soft fig-line", 14),
            box(154, _BOTTOM - full, 12, full + 8, "fig-fill"),
            disc(160, 280, 16, "fig-fill"),
        ]
    return [box(100, _BOTTOM - full, 120, full, "fig-fill"), path(f"M100 20 V{_BOTTOM} H220 V20", "fig-line")]


def _upright(figure: MeasureScale, numbered: Mapping[int, str]) -> list[str]:
    parts = figure.parts
    left, right = (146, 174) if figure.form == "thermometer" else (100, 220)
    pieces = [words(right + 8, 14, figure.unit, _NUMBER, "start")]
    for mark in range(parts + 1):
        y = _BOTTOM - _HIGH * mark / parts
        pieces.append(line(right - (18 if mark in numbered else 10), y, right, y, "fig-tick"))
    for mark in _apart(numbered, _HIGH / parts, across=False):
        pieces.append(words(right + 8, _BOTTOM - _HIGH * mark / parts + 5, numbered[mark], _NUMBER, "start"))
    for name, along in figure.pointers:
        y = float(_BOTTOM - _HIGH * along)
        head = path(f"M{left - 12} {at(y - 5)} L{left - 2} {at(y)} L{left - 12} {at(y + 5)} Z", "fig-mark")
        pieces += [line(left - 40, y, left - 10, y, "fig-mark"), head, words(left - 48, y + 5, name, anchor="end")]
    return pieces


def _apart(numbered: Mapping[int, str], gap: float, across: bool) -> list[int]:
    """The marks whose numbers can be written without running into each other; always the first."""
    shown: list[int] = []
    for mark, text in sorted(numbered.items()):
        room = (len(text) + len(numbered[shown[-1]])) / 2 * _LETTER + 6 if shown and across else 16
        if not shown or (mark - shown[-1]) * gap >= room:
            shown.append(mark)
    return shown
