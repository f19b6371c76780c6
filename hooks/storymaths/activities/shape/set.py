"""The built-in set of named shapes, flat and solid, with what can be counted on them.

A property is None where it is not to be counted: a circle has lines of symmetry without end, and people
do not agree on how to count the faces, edges and vertices of solids with a curved surface.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from ...expression import noun

SAID = {
    "sides": "straight sides",
    "corners": "corners",
    "symmetry": "lines of symmetry",
    "right_angles": "right angles",
    "faces": "faces",
    "edges": "edges",
    "vertices": "vertices",
    "acute": "acute angles",
    "obtuse": "obtuse angles",
    "curved": "has a curved side",
    "parallel": "has parallel sides",
    "perpendicular": "has perpendicular sides",
}
YES_OR_NO = ("curved", "parallel", "perpendicular")
"""What a shape has or has not, and is not counted; of solids the first alone."""
OF_A_YEAR = frozenset({"parallel", "perpendicular", "acute", "obtuse"})
"""What is not looked at before the year has a word for it."""
SOLID_COUNTS = frozenset({"faces", "edges", "vertices"})
"""What is counted on solids; all else is on flat shapes."""

WORDS = {
    "sides": "side", "corners": "corner", "symmetry": "line of symmetry", "right_angles": "right angle",
    "faces": "face", "edges": "edge", "vertices": "vertex", "acute": "acute angle", "obtuse": "obtuse angle",
    "parallel": "parallel", "perpendicular": "perpendicular",
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Flat:
    """A 2-D shape. Its angles are those inside it, as it is drawn."""

    name: str
    sides: int
    corners: int
    symmetry: int | None
    right_angles: int | None
    acute: int | None = None
    obtuse: int | None = None
    curved: bool = False
    parallel: bool = False
    """Whether any two of its sides are."""
    perpendicular: bool = False
    """Whether any two of its sides are."""


@dataclass(frozen=True, slots=True)
class Solid:
    """A 3-D shape, its counts as the parts one adds: a prism has its ends and its sides."""

    name: str
    faces: tuple[int, ...] | None
    edges: tuple[int, ...] | None
    vertices: tuple[int, ...] | None
    curved: bool = False


def _prism(name: str, base: int) -> Solid:
    """Two ends and a face for each side; edges round both ends and between them."""
    return Solid(name, (2, base), (base, base, base), (base, base))


def _pyramid(name: str, base: int) -> Solid:
    """A base and a face for each of its sides; edges round it and up to the point."""
    return Solid(name, (1, base), (base, base), (base, 1))


def _curved(name: str) -> Solid:
    return Solid(name, None, None, None, curved=True)


FLATS: dict[str, Flat] = {
    shape.name: shape
    for shape in (
        Flat("circle", 0, 0, None, 0, curved=True),
        Flat("oval", 0, 0, 2, 0, curved=True),
        Flat("semicircle", 1, 2, 1, None, curved=True),
        Flat("equilateral triangle", 3, 3, 3, 0, 3, 0),
        Flat("isosceles triangle", 3, 3, 1, 0, 3, 0),
        Flat("scalene triangle", 3, 3, 0, 0, 3, 0),
        Flat("right-angled triangle", 3, 3, 0, 1, 2, 0, perpendicular=True),
        Flat("right-angled isosceles triangle", 3, 3, 1, 1, 2, 0, perpendicular=True),
        Flat("square", 4, 4, 4, 4, 0, 0, parallel=True, perpendicular=True),
        Flat("rectangle", 4, 4, 2, 4, 0, 0, parallel=True, perpendicular=True),
        Flat("rhombus", 4, 4, 2, 0, 2, 2, parallel=True),
        Flat("parallelogram", 4, 4, 0, 0, 2, 2, parallel=True),
        Flat("kite", 4, 4, 1, 0, 1, 3),
        Flat("isosceles trapezium", 4, 4, 1, 0, 2, 2, parallel=True),
        Flat("right-angled trapezium", 4, 4, 0, 2, 1, 1, parallel=True, perpendicular=True),
        Flat("regular pentagon", 5, 5, 5, 0, 0, 5),
        Flat("house-shaped pentagon", 5, 5, 1, 2, 0, 3, parallel=True, perpendicular=True),
        Flat("regular hexagon", 6, 6, 6, 0, 0, 6, parallel=True),
        Flat("L-shaped hexagon", 6, 6, 1, 5, 0, 0, parallel=True, perpendicular=True),
        Flat("regular heptagon", 7, 7, 7, 0, 0, 7),
        Flat("regular octagon", 8, 8, 8, 0, 0, 8, parallel=True, perpendicular=True),
    )
}
"""The rectangle of the set is longer than wide, the rhombus and the parallelogram lean, the right-angled
triangle has three different sides, and the two arms of the L are alike."""

SOLIDS: dict[str, Solid] = {
    solid.name: solid
    for solid in (
        Solid("cube", (2, 4), (4, 4, 4), (4, 4)),
        Solid("cuboid", (2, 4), (4, 4, 4), (4, 4)),
        _prism("triangular prism", 3),
        _prism("pentagonal prism", 5),
        _prism("hexagonal prism", 6),
        _pyramid("triangular-based pyramid", 3),
        _pyramid("square-based pyramid", 4),
        _pyramid("pentagonal-based pyramid", 5),
        _pyramid("hexagonal-based pyramid", 6),
        Solid("octahedron", (4, 4), (4, 4, 4), (4, 1, 1)),
        _curved("cylinder"),
        _curved("cone"),
        _curved("sphere"),
        _curved("hemisphere"),
    )
}
_ALSO = {
    "triangle": "equilateral triangle", "oblong": "rectangle", "pentagon": "regular pentagon", "ellipse": "oval",
    "hexagon": "regular hexagon", "heptagon": "regular heptagon", "octagon": "regular octagon", "prism": "triangular prism",
    "pyramid": "square-based pyramid", "tetrahedron": "triangular-based pyramid", "semi-circle": "semicircle",
    "right angled triangle": "right-angled triangle", "trapezium": "isosceles trapezium",
}  # fmt: skip


def known_name(name: str) -> str | None:
    """The name in the set of a shape as an author may write it; None when it is not there."""
    plain = " ".join(name.split())
    for form in (plain, plain.lower(), _ALSO.get(plain.lower(), "")):
        if form in FLATS or form in SOLIDS:
            return form
    return None


def own_name(name: str) -> str:
    """What a shape is called where its author calls it so: a triangle is no equilateral triangle to who has no such word."""
    plain = " ".join(name.split())
    return plain.lower() if plain.lower() in _ALSO else known_name(name) or plain


def with_article(name: str) -> str:
    """``a cube``, ``an oval``, ``an L-shaped hexagon``; a name that says whose it is stays as it is."""
    return noun.with_article(name) if known_name(name) and own_name(name) == name else name


def parts_of(shape: Flat | Solid) -> Mapping[str, tuple[int, ...] | None]:
    """All that can be counted on a sort of shape, as the parts one adds; None where it is not counted on this one."""
    if isinstance(shape, Solid):
        return {"faces": shape.faces, "edges": shape.edges, "vertices": shape.vertices}
    counts = {
        "sides": shape.sides, "corners": shape.corners, "symmetry": shape.symmetry, "right_angles": shape.right_angles,
        "acute": shape.acute, "obtuse": shape.obtuse,
    }  # fmt: skip
    return {prop: None if count is None else (count,) for prop, count in counts.items()}


def has(shape: Flat | Solid, fact: str) -> bool:
    """Whether it has a curved side, or two that are parallel or perpendicular."""
    if isinstance(shape, Solid) or fact == "curved":
        return shape.curved
    return shape.parallel if fact == "parallel" else shape.perpendicular


def count_of(shape: Flat | Solid, prop: str) -> int | None:
    """How many of a property a shape has; None where it is not counted."""
    parts = parts_of(shape).get(prop)
    return None if parts is None else sum(parts)
