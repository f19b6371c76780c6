"""Words as outlines, so that a drawing looks the same on a page, on a card and on paper, whatever letters are there."""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING

from ..sheets.letters import folders, printable

if TYPE_CHECKING:
    from fontTools.ttLib import TTFont  # type: ignore[import-untyped]

_FACE = "ABeeZee-Regular.ttf"


def width(words: str, size: float) -> float:
    """How wide a line of words is."""
    font = _font()
    advances, names = font["hmtx"], font.getBestCmap()
    units = sum(advances[names[ord(sign)]][0] for sign in _drawable(words))
    return float(units * size / font["head"].unitsPerEm)


def outline(words: str, x: float, y: float, size: float) -> str:
    """The course of a path that draws a line of words from ``x`` on the line at ``y``."""
    from fontTools.pens.svgPathPen import SVGPathPen  # type: ignore[import-untyped] # noqa: PLC0415 - slow, seldom needed
    from fontTools.pens.transformPen import TransformPen  # type: ignore[import-untyped] # noqa: PLC0415

    font = _font()
    names, glyphs, scale = font.getBestCmap(), font.getGlyphSet(), size / font["head"].unitsPerEm
    pen = SVGPathPen(glyphs, ntos=lambda number: f"{number:.1f}".rstrip("0").rstrip("."))
    for sign in _drawable(words):
        glyphs[names[ord(sign)]].draw(TransformPen(pen, (scale, 0, 0, -scale, x, y)))
        x += font["hmtx"][names[ord(sign)]][0] * scale
    return str(pen.getCommands())


def lines_of(words: str, size: float, room: float) -> list[str]:
    """The words on as few lines as they take; a word wider than the room has a line to itself."""
    lines: list[str] = []
    for word in words.split():
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and width(longer, size) <= room:
            lines[-1] = longer
        else:
            lines.append(word)
    return lines


def _drawable(words: str) -> str:
    known = _font().getBestCmap()
    return "".join(sign for sign in printable(words) if ord(sign) in known)


@cache
def _font() -> TTFont:
    from fontTools.ttLib import TTFont  # noqa: PLC0415 - slow, seldom needed

    return TTFont(next(file for folder in folders() if (file := folder / _FACE).is_file()))
