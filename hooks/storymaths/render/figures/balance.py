"""A beam on a post with a pan at each end: who stands on each, and which side is lower."""

from __future__ import annotations

import textwrap
from collections.abc import Mapping, Sequence
from html import escape
from typing import Any

_WIDE, _LINE, _PAD = 320, 18, 6
_LETTERS = 15
"""Letters of the card's text, 14 units high, that fit on one line of a card."""
_TILT = 12
_CARD = 132


def draw(data: Mapping[str, Any]) -> str:
    """``left`` and ``right``: lists of ``[name, amount]``; ``tilt``: ``left``, ``right`` or ``level``."""
    cards = {side: [_lines(name, amount) for name, amount in data[side]] for side in ("left", "right")}
    tallest = max(sum(_height(card) for card in side) for side in cards.values())
    drop = {"left": _TILT, "right": -_TILT}.get(data["tilt"], 0)
    pan = max(tallest, _LINE) + _TILT + _PAD
    post, foot = pan + 18, pan + 74
    parts = [
        f'<line class="fig-line" x1="80" y1="{post + drop}" x2="240" y2="{post - drop}"/>',
        f'<path class="fig-fill" d="M160 {post} L146 {foot} H174 Z"/>',
        f'<line class="fig-line" x1="110" y1="{foot}" x2="210" y2="{foot}"/>',
        _pan(80, pan + drop, post + drop, cards["left"]),
        _pan(240, pan - drop, post - drop, cards["right"]),
    ]
    return (
        f'<svg viewBox="0 0 {_WIDE} {foot + _PAD}" role="presentation" class="figure figure-balance">'
        f"{''.join(parts)}</svg>"
    )


def _pan(middle: int, level: int, beam: int, cards: Sequence[Sequence[str]]) -> str:
    parts = [
        f'<line class="fig-line" x1="{middle}" y1="{level}" x2="{middle}" y2="{beam}"/>',
        f'<line class="fig-line" x1="{middle - 70}" y1="{level}" x2="{middle + 70}" y2="{level}"/>',
    ]
    top = level
    for card in reversed(cards):
        top -= _height(card)
        parts.append(
            f'<rect class="fig-soft" x="{middle - _CARD // 2}" y="{top}" width="{_CARD}" height="{_height(card) - 2}" rx="4"/>'
        )
        parts += [
            f'<text class="fig-text" x="{middle}" y="{top + 15 + index * _LINE}" font-size="14" text-anchor="middle">'
            f"{escape(line)}</text>"
            for index, line in enumerate(card)
        ]
    return "".join(parts)


def _height(card: Sequence[str]) -> int:
    return len(card) * _LINE + 4


def _lines(name: str, amount: str) -> list[str]:
    return textwrap.wrap(f"{name} {amount}", _LETTERS) or [""]
