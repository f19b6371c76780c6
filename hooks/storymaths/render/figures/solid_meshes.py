"""The corners and faces of the named solids with flat faces, for drawing them as seen from above and in front."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from math import cos, pi, sin

Point = tuple[float, float, float]


@dataclass(frozen=True, slots=True)
class Mesh:
    """Corners, and faces as rounds of corner numbers, anti-clockwise when seen from outside."""

    corners: tuple[Point, ...]
    faces: tuple[tuple[int, ...], ...]

    def edges(self) -> frozenset[frozenset[int]]:
        """Each edge as its two corners."""
        return frozenset(frozenset((face[i - 1], face[i])) for face in self.faces for i in range(len(face)))


def prism(base: int, height: float = 70, radius: float = 42, turn: float = 0.35) -> Mesh:
    """A base with so many sides, and the same again above it."""
    ring = [(radius * cos(turn + 2 * pi * i / base), radius * sin(turn + 2 * pi * i / base)) for i in range(base)]
    corners = [(x, y, z) for z in (0.0, height) for x, y in ring]
    sides = [(i, (i + 1) % base, base + (i + 1) % base, base + i) for i in range(base)]
    return Mesh(tuple(corners), (tuple(range(base - 1, -1, -1)), tuple(range(base, 2 * base)), *sides))


def pyramid(base: int, height: float = 84, radius: float = 46, turn: float = 0.35) -> Mesh:
    """A base with so many sides, and a point above it."""
    ring = [(radius * cos(turn + 2 * pi * i / base), radius * sin(turn + 2 * pi * i / base), 0.0) for i in range(base)]
    sides = [(i, (i + 1) % base, base) for i in range(base)]
    return Mesh((*ring, (0.0, 0.0, height)), (tuple(range(base - 1, -1, -1)), *sides))


def _cuboid(long: float, wide: float, high: float) -> Mesh:
    box = prism(4, high, 1.0, pi / 4)
    corners = tuple((x * long / 2 * 2**0.5, y * wide / 2 * 2**0.5, z) for x, y, z in box.corners)
    turned = tuple((x * cos(0.45) - y * sin(0.45), x * sin(0.45) + y * cos(0.45), z) for x, y, z in corners)
    return Mesh(turned, box.faces)


def _octahedron() -> Mesh:
    upper = pyramid(4, 52, 46)
    ring, top, bottom = upper.corners[:4], upper.corners[4], (0.0, 0.0, -52.0)
    faces = [(i, (i + 1) % 4, 4) for i in range(4)] + [((i + 1) % 4, i, 5) for i in range(4)]
    return Mesh((*ring, top, bottom), tuple(faces))


MESHES: Mapping[str, Callable[[], Mesh]] = {
    "cube": lambda: _cuboid(62, 62, 62),
    "cuboid": lambda: _cuboid(84, 44, 42),
    "triangular prism": lambda: prism(3),
    "pentagonal prism": lambda: prism(5),
    "hexagonal prism": lambda: prism(6),
    "triangular-based pyramid": lambda: pyramid(3),
    "square-based pyramid": lambda: pyramid(4),
    "pentagonal-based pyramid": lambda: pyramid(5),
    "hexagonal-based pyramid": lambda: pyramid(6),
    "octahedron": _octahedron,
}
