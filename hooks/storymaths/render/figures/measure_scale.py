"""A scale with marks, numbers at some of them, and arrows to be read: a ruler, a jug or a thermometer."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from .pen import arrow_down, at, box, disc, line, path, svg, words, words_inside

_LEFT, _WIDE, _TOP = 24, 272, 58
_BOTTOM, _HIGH = 270, 240
_LETTER = 8
"""About how wide a figure of the smallest text is."""


def draw(data: Mapping[str, Any]) -> str:
    """``labels`` are [mark, words]; ``pointers`` are [name, over, under], how far along the scale."""
    numbered = {int(mark): str(text) for mark, text in data["labels"]}
    if data["form"] == "ruler":
        return svg("measure-scale", 320, 130, *_ruler(data, numbered))
    return svg("measure-scale", 320, 300, *_vessel(data), *_upright(data, numbered))


def _ruler(data: Mapping[str, Any], numbered: Mapping[int, str]) -> list[str]:
    parts = int(data["parts"])
    pieces = [box(_LEFT - 14, _TOP, _WIDE + 28, 46, "fig-soft fig-line", 4)]
    for mark in range(parts + 1):
        x = _LEFT + _WIDE * mark / parts
        pieces.append(line(x, _TOP, x, _TOP + (18 if mark in numbered else 10), "fig-tick"))
    for mark in _apart(numbered, _WIDE / parts, across=True):
        pieces.append(words_inside(_LEFT + _WIDE * mark / parts, _TOP + 36, numbered[mark], 320, 14))
    pieces.append(words(_LEFT + _WIDE + 14, _TOP + 64, str(data["unit"]), 14, "end"))
    for name, over, under in data["pointers"]:
        x = _LEFT + _WIDE * over / under
        pieces += [arrow_down(x, _TOP - 2, 24), words(x, _TOP - 30, str(name))]
    return pieces


def _vessel(data: Mapping[str, Any]) -> list[str]:
    """The jug or thermometer, filled to the highest arrow."""
    full = _HIGH * max((over / under for _, over, under in data["pointers"]), default=0.0)
    if data["form"] == "thermometer":
        return [
            box(146, 18, 28, 262, "fig-soft fig-line", 14),
            box(154, _BOTTOM - full, 12, full + 8, "fig-fill"),
            disc(160, 280, 16, "fig-fill"),
        ]
    return [box(100, _BOTTOM - full, 120, full, "fig-fill"), path(f"M100 20 V{_BOTTOM} H220 V20", "fig-line")]


def _upright(data: Mapping[str, Any], numbered: Mapping[int, str]) -> list[str]:
    parts = int(data["parts"])
    left, right = (146, 174) if data["form"] == "thermometer" else (100, 220)
    pieces = [words(right + 8, 14, str(data["unit"]), 14, "start")]
    for mark in range(parts + 1):
        y = _BOTTOM - _HIGH * mark / parts
        pieces.append(line(right - (18 if mark in numbered else 10), y, right, y, "fig-tick"))
    for mark in _apart(numbered, _HIGH / parts, across=False):
        pieces.append(words(right + 8, _BOTTOM - _HIGH * mark / parts + 5, numbered[mark], 14, "start"))
    for name, over, under in data["pointers"]:
        y = _BOTTOM - _HIGH * over / under
        head = path(f"M{left - 12} {at(y - 5)} L{left - 2} {at(y)} L{left - 12} {at(y + 5)} Z", "fig-mark")
        pieces += [line(left - 40, y, left - 10, y, "fig-mark"), head, words(left - 48, y + 5, str(name), anchor="end")]
    return pieces


def _apart(numbered: Mapping[int, str], gap: float, across: bool) -> list[int]:
    """The marks whose numbers can be written without running into each other; always the first."""
    shown: list[int] = []
    for mark, text in sorted(numbered.items()):
        room = (len(text) + len(numbered[shown[-1]])) / 2 * _LETTER + 6 if shown and across else 16
        if not shown or (mark - shown[-1]) * gap >= room:
            shown.append(mark)
    return shown
