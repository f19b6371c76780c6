"""A beam on a post with a pan at each end: who stands on each, and which side is lower."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence

from ...model.figures.measures import Balance
from .pen import box, line, path, svg, words

_LINE, _PAD = 18, 6
_LETTERS = 15
"""Letters of the card's text, 14 units high, that fit on one line of a card."""
_TILT = 12
_CARD = 132


def draw(figure: Balance) -> str:
    """The balance, a card for everybody on it."""
    left, right = (
        [textwrap.wrap(" ".join(one), _LETTERS) or [""] for one in side] for side in (figure.left, figure.right)
    )
    tallest = max(sum(map(_height, side)) for side in (left, right))
    drop = {"left": _TILT, "right": -_TILT, "level": 0}[figure.tilt]
    pan = max(tallest, _LINE) + _TILT + _PAD
    post, foot = pan + 18, pan + 74
    return svg(
        figure.NAME,
        320,
        foot + _PAD,
        line(80, post + drop, 240, post - drop),
        path(f"M160 {post} L146 {foot} H174 Z", "fig-fill"),
        line(110, foot, 210, foot),
        *_pan(80, pan + drop, post + drop, left),
        *_pan(240, pan - drop, post - drop, right),
    )


def _pan(middle: int, level: int, beam: int, cards: Sequence[Sequence[str]]) -> list[str]:
    parts = [line(middle, level, middle, beam), line(middle - 70, level, middle + 70, level)]
    top = level
    for card in reversed(cards):
        top -= _height(card)
        parts.append(box(middle - _CARD / 2, top, _CARD, _height(card) - 2, "fig-soft", 4))
        parts += [words(middle, top + 15 + row * _LINE, text, 14) for row, text in enumerate(card)]
    return parts


def _height(card: Sequence[str]) -> int:
    return len(card) * _LINE + 4
