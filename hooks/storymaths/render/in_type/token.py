"""A character as a token: a shape, a pattern and an initial, told apart in grey and as a cut-out as well as in colour."""

from __future__ import annotations

import math
from collections.abc import Mapping

from ...model.token import Pattern, Shape, Token
from .letters import outline, width

INK, PAPER = "#2b2a33", "#fffdf7"
_HALO = f'stroke="{PAPER}" stroke-width="7" stroke-linejoin="round"'
"""Seen by night, where the line around the shape is as dark as the page."""


def token_drawing(token: Token) -> str:
    """The token, as SVG."""
    shape, (x, y) = _SHAPES[token.shape], _MIDDLES.get(token.shape, (50, 50))
    size = (32, 26, 20)[min(len(token.letters), 3) - 1]
    wide = width(token.letters, size)
    return (
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 100" width="100" height="100">'
        f'<clipPath id="s"><path d="{shape}"/></clipPath><path fill="{_TINTS[token.pattern]}" {_HALO} d="{shape}"/>'
        f'<g clip-path="url(#s)" fill="none" stroke="{INK}" stroke-width="2.5">{_PATTERNS[token.pattern]}</g>'
        f'<path fill="none" stroke="{INK}" stroke-width="4" stroke-linejoin="round" d="{shape}"/>'
        f'<circle cx="{x}" cy="{y}" r="21" fill="{PAPER}" stroke="{INK}" stroke-width="2.5"/>'
        f'<path fill="{INK}" d="{outline(token.letters, x - wide / 2, y + size * 0.36, size)}"/></svg>\n'
    )


def _around(corners: int, radius: float, turned: float = 0, y: float = 50) -> str:
    points = []
    for corner in range(corners):
        angle = 2 * math.pi * corner / corners - math.pi / 2 + turned
        points.append(f"{50 + radius * math.cos(angle):.1f} {y + radius * math.sin(angle):.1f}")
    return f"M{'L'.join(points)}Z"


def _petals(number: int) -> str:
    course = []
    for petal in range(number + 1):
        angle = 2 * math.pi * (petal - 0.5) / number - math.pi / 2
        point = f"{50 + 33 * math.cos(angle):.1f} {50 + 33 * math.sin(angle):.1f}"
        course.append(f"A17 17 0 0 1 {point}" if petal else f"M{point}")
    return f"{''.join(course)}Z"


_SHAPES: Mapping[Shape, str] = {
    "circle": "M50 6A44 44 0 0 1 50 94A44 44 0 0 1 50 6Z",
    "square": "M10 10H90V90H10Z",
    "triangle": "M50 4L98 92H2Z",
    "arch": "M12 94V48A38 38 0 0 1 88 48V94Z",
    "hexagon": _around(6, 46),
    "flower": _petals(6),
    "diamond": "M50 2L96 50L50 98L4 50Z",
    "shield": "M10 10H90V48C90 74 72 88 50 96C28 88 10 74 10 48Z",
}
_MIDDLES: Mapping[Shape, tuple[float, float]] = {"triangle": (50, 63), "shield": (50, 47), "arch": (50, 53)}
_EVERY = range(-100, 201, 14)
_DOTS = "".join(f"M{x} {y}h.1" for row, y in enumerate(range(4, 100, 12)) for x in range(4 + row % 2 * 7, 100, 14))
_PATTERNS: Mapping[Pattern, str] = {
    "stripes": f'<path d="{"".join(f"M{x} 0L{x + 100} 100" for x in _EVERY)}"/>',
    "dots": f'<path stroke-width="6" stroke-linecap="round" d="{_DOTS}"/>',
    "plain": "",
    "squares": f'<path d="{"".join(f"M{at} 0V100M0 {at}H100" for at in range(8, 100, 14))}"/>',
    "waves": f'<path d="{"".join(f"M-4 {y}" + "q6.5 -9 13 0t13 0t13 0t13 0t13 0t13 0t13 0t13 0" for y in range(8, 106, 13))}"/>',
    "rings": "".join(f'<circle cx="50" cy="50" r="{radius}"/>' for radius in (29, 38)),
}
_TINTS: Mapping[Pattern, str] = {
    "stripes": "#f3d9a4", "dots": "#cfe3e0", "plain": "#e6b8a8", "squares": "#dde6c8", "waves": "#d5ddef", "rings": "#ecd6e4",
}  # fmt: skip
