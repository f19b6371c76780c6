"""Solids side by side, each over its name; edges behind are dashed."""

from __future__ import annotations

from math import cos, sin

from ...model.figures.shapes import SolidShapes
from .lettering import LINE, block, broken
from .pen import at, disc, line, path, svg
from .solid_meshes import MESHES, Mesh

_ACROSS, _WIDE, _HIGH = 3, 106, 116
_TILT = 0.42
"""How far from above one looks, in radians."""


def draw(figure: SolidShapes) -> str:
    """Three to a row, the titles in lines that fit."""
    pieces, top = [], 6.0
    solids = [(name, broken(title, _WIDE + 4), turn) for name, title, turn in figure.shapes]
    for first in range(0, len(solids), _ACROSS):
        row = solids[first : first + _ACROSS]
        for column, (name, title, turn) in enumerate(row):
            middle = 1 + (column + 0.5) * _WIDE
            pieces += [_laid(name, middle, top + _HIGH / 2, turn), block(middle, top + _HIGH + LINE - 2, title)]
        top += _HIGH + LINE * max(len(title) for _, title, _ in row) + 12
    return svg(figure.NAME, 2 + _WIDE * min(_ACROSS, len(solids)), top, *pieces)


def _laid(name: str, x: float, y: float, turn: int) -> str:
    """A solid standing, or lying on another side."""
    drawn = _solid(name, x, y)
    return f'<g transform="rotate({turn} {at(x)} {at(y)})">{drawn}</g>' if turn else drawn


def _solid(name: str, x: float, y: float) -> str:
    if name in MESHES:
        return _flat_faced(MESHES[name](), x, y)
    return {"cylinder": _cylinder, "cone": _cone, "sphere": _sphere, "hemisphere": _hemisphere}[name](x, y)


def _flat_faced(mesh: Mesh, x: float, y: float) -> str:
    seen_at = [(px, -(pz * cos(_TILT) + py * sin(_TILT))) for px, py, pz in mesh.corners]
    tops = [down for _, down in seen_at]
    sides = [across for across, _ in seen_at]
    left, level = x - (max(sides) + min(sides)) / 2, y - (max(tops) + min(tops)) / 2
    points = [(left + across, level + down) for across, down in seen_at]
    front = [face for face in mesh.faces if _faces_us([points[i] for i in face])]
    seen = {frozenset((face[i - 1], face[i])) for face in front for i in range(len(face))}
    drawn = [
        path(f"M{' L'.join(f'{at(points[i][0])} {at(points[i][1])}' for i in face)} Z", "fig-soft") for face in front
    ]
    for edge in sorted(mesh.edges(), key=sorted):
        one, other = (points[i] for i in sorted(edge))
        drawn.append(line(*one, *other) if edge in seen else _behind(line(*one, *other, "fig-line fig-hidden")))
    return "".join(drawn)


def _faces_us(corners: list[tuple[float, float]]) -> bool:
    """Whether a face's round, anti-clockwise from outside, is so on the page too (where y runs down)."""
    area = sum(corners[i - 1][0] * corners[i][1] - corners[i][0] * corners[i - 1][1] for i in range(len(corners)))
    return area < 0


def _behind(drawn: str) -> str:
    """A line that is behind, in dashes: how it is told apart must not hang on a stylesheet."""
    return drawn.replace("/>", ' stroke-dasharray="3 5"/>')


def _ring(x: float, y: float, wide: float, deep: float, open_to_view: bool = False) -> str:
    """A round edge lying level: its front half, and its back half, dashed where it is behind."""
    front = path(f"M{at(x - wide)} {at(y)} a{at(wide)} {at(deep)} 0 0 0 {at(2 * wide)} 0")
    back = path(f"M{at(x - wide)} {at(y)} a{at(wide)} {at(deep)} 0 0 1 {at(2 * wide)} 0", "fig-line fig-hidden")
    return front + (back.replace(" fig-hidden", "") if open_to_view else _behind(back))


def _cylinder(x: float, y: float) -> str:
    body = path(
        f"M{at(x - 36)} {at(y - 32)} V{at(y + 32)} a36 13 0 0 0 72 0 V{at(y - 32)} a36 13 0 0 0 -72 0 Z", "fig-soft"
    )
    sides = line(x - 36, y - 32, x - 36, y + 32) + line(x + 36, y - 32, x + 36, y + 32)
    return body + sides + _ring(x, y - 32, 36, 13, open_to_view=True) + _ring(x, y + 32, 36, 13)


def _cone(x: float, y: float) -> str:
    body = path(f"M{at(x)} {at(y - 46)} L{at(x - 40)} {at(y + 32)} a40 14 0 0 0 80 0 Z", "fig-soft")
    return body + line(x, y - 46, x - 40, y + 32) + line(x, y - 46, x + 40, y + 32) + _ring(x, y + 32, 40, 14)


def _sphere(x: float, y: float) -> str:
    return disc(x, y, 42, "fig-soft") + disc(x, y, 42) + _ring(x, y, 42, 13)


def _hemisphere(x: float, y: float) -> str:
    dome = f"M{at(x - 44)} {at(y + 20)} a44 44 0 0 1 88 0"
    return path(f"{dome} a44 13 0 0 1 -88 0 Z", "fig-soft") + path(dome) + _ring(x, y + 20, 44, 13)
