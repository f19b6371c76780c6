"""Whether a shape with stated counts can be: exact rules for flat shapes with straight sides and for solids.

Flat shapes may have dents. Solids have flat faces and neither dents nor holes.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import product

from pydantic import Field

from ...model.fields import Strict
from .set import FLATS, SOLID_COUNTS, SOLIDS, count_of

_LARGEST = 100
_Counted = Field(default=None, ge=0, le=_LARGEST, strict=True)


class Claim(Strict):
    """Counts somebody says a shape has: of a flat shape, or of a solid."""

    sides: int | None = _Counted
    """How many sides."""
    corners: int | None = _Counted
    """How many corners."""
    symmetry: int | None = _Counted
    """How many lines of symmetry."""
    right_angles: int | None = _Counted
    """How many right angles."""
    faces: int | None = _Counted
    """How many faces."""
    edges: int | None = _Counted
    """How many edges."""
    vertices: int | None = _Counted
    """How many corners of a solid."""

    @property
    def given(self) -> dict[str, int]:
        """The counts that are stated."""
        return self.model_dump(exclude_none=True)

    @property
    def solid(self) -> bool:
        """Whether it speaks of solids."""
        return bool(self.given.keys() & SOLID_COUNTS)

    def find_shapes(self) -> tuple[str, ...]:
        """The shapes of the set that have these counts; none with a curved side."""
        return tuple(
            name
            for name, shape in (SOLIDS if self.solid else FLATS).items()
            if not shape.curved and all(count_of(shape, prop) == count for prop, count in self.given.items())
        )

    def is_half_true(self) -> bool:
        """Whether some shape of the set has one of these counts."""
        return any(Claim.model_validate({prop: count}).find_shapes() for prop, count in self.given.items())


def right_angles_can_be(sides: int, right: int) -> bool:
    """Whether a closed shape of straight sides can have exactly so many right angles inside.

    The angles come to 180 × (sides − 2) degrees. All those that are not right angles must lie between 0 and
    360 degrees and be neither 90 nor 180; any such list of angles with the right total closes up to a shape
    (Culberson and Rawlins, Turtlegons, 1985).
    """
    others, rest = sides - right, 180 * (sides - 2) - 90 * right
    if others < 0 or sides < 3:
        return False
    if others == 0:
        return rest == 0
    if others == 1:
        return 0 < rest < 360 and rest not in (90, 180)
    return 0 < rest < 360 * others


def solids_that_can_be(given: dict[str, int]) -> Iterator[tuple[int, int, int]]:
    """Faces, edges and vertices of every sort of solid, within a hundred faces and vertices, with these counts.

    Such solids are just those with F + V − E = 2, at least 3 edges round every face and at every vertex, and
    so 3 × F and 3 × V no more than 2 × E (Steinitz).
    """
    for faces, vertices in product(
        [given["faces"]] if "faces" in given else range(4, 2 * _LARGEST),
        [given["vertices"]] if "vertices" in given else range(4, 2 * _LARGEST),
    ):
        edges = faces + vertices - 2
        if given.get("edges", edges) == edges and 3 * max(faces, vertices) <= 2 * edges and min(faces, vertices) >= 4:
            yield faces, edges, vertices
