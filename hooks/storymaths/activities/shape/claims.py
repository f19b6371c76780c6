"""Whether a shape with stated counts can be: exact rules for flat shapes with straight sides and for solids.

Flat shapes may have dents. Solids have flat faces and neither dents nor holes.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import product

from pydantic import Field

from ...model.fields import Strict
from ..kind import Unsolvable
from ..saying import counted, listed
from .set import FLATS, SAID, SOLIDS, count_of

_LARGEST = 100
_Counted = Field(default=None, ge=0, le=_LARGEST, strict=True)


class Claim(Strict):
    """Counts somebody says a shape has: of a flat shape, or of a solid."""

    sides: int | None = _Counted
    corners: int | None = _Counted
    symmetry: int | None = _Counted
    right_angles: int | None = _Counted
    faces: int | None = _Counted
    edges: int | None = _Counted
    vertices: int | None = _Counted

    def given(self) -> dict[str, int]:
        """The counts that are stated."""
        return {name: value for name in type(self).model_fields if (value := getattr(self, name)) is not None}

    def said(self) -> str:
        """``5 faces and 8 edges``."""
        return listed([counted(count, SAID[name], _ONE.get(name)) for name, count in self.given().items()])


_ONE = {"vertices": "vertex", "symmetry": "line of symmetry"}


@dataclass(frozen=True, slots=True)
class Verdict:
    """Whether it can be, shapes of the set that show it, and why."""

    can: bool
    shapes: tuple[str, ...]
    why: str


def judged(claim: Claim, index: int, year: int) -> Verdict:
    """The verdict on a claim. Raises ``Unsolvable`` where nothing, too much, or something undecided is claimed."""
    given = claim.given()
    loc = ("claims", index)
    solid = given.keys() & {"faces", "edges", "vertices"}
    if not given or (solid and len(solid) < len(given)):
        message = "The claim is empty." if not given else "The claim mixes counts of flat shapes and of solids."
        raise Unsolvable(loc, message, "say for example {sides: 4, right_angles: 4} or {faces: 6, edges: 12}.")
    shapes = tuple(
        name
        for name, shape in (SOLIDS if solid else FLATS).items()
        if not shape.curved and all(count_of(shape, prop) == count for prop, count in given.items())
    )
    if shapes:
        return Verdict(True, shapes, f"Look at the {shapes[0]}.")
    why = next(_against_solid(given) if solid else _against_flat(given, year), "")
    if not why and not solid and {"right_angles", "symmetry"} <= given.keys():
        message = "Right angles and lines of symmetry together cannot be decided for this shape."
        raise Unsolvable(loc, message, "claim one of the two.")
    return Verdict(not why, (), why or "It can be made, though no shape of the set has these counts.")


def _against_flat(given: dict[str, int], year: int) -> Iterator[str]:
    """Reasons why no shape with straight sides has these counts."""
    sides = given.get("sides", given.get("corners"))
    if sides is None:
        if given.get("right_angles", 0) > 0 and not any(
            right_angles_can_be(n, given["right_angles"]) for n in range(3, 400)
        ):
            yield "No number of sides allows so many right angles."
        return
    if given.get("corners", sides) != sides:
        yield "With straight sides there are as many corners as sides."
    if sides < 3:
        yield "With fewer than 3 straight sides nothing is closed in."
    lines = given.get("symmetry", 0)
    if lines and sides % lines:
        yield f"Lines of symmetry share the sides out evenly, and {sides} sides cannot be shared out evenly between {lines} lines."
    right = given.get("right_angles", 0)
    if not right_angles_can_be(sides, right):
        yield _angles(sides, right, year)


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


def _angles(sides: int, right: int, year: int) -> str:
    if year < 6 or right > sides:
        return f"With {counted(right, 'right angles')} the {sides} sides do not close up: try it with strips."
    total = 180 * (sides - 2)
    rest = total - 90 * right
    sums = f"The angles come to 180 × {sides - 2} = {total} degrees, and {right} × 90 = {90 * right}"
    if rest <= 0 or right == sides:
        return f"{sums}, which {'leaves nothing for the rest' if rest == 0 else 'is not the same' if rest > 0 else 'is too many'}."
    left = counted(sides - right, "other corners")
    return f"{sums}; {total} − {90 * right} = {rest} is left for {left}, which cannot be."


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


def _against_solid(given: dict[str, int]) -> Iterator[str]:
    """Reasons why no solid with flat faces, without dents or holes, has these counts."""
    if next(solids_that_can_be(given), None):
        return
    for name in ("faces", "vertices"):
        if given.get(name, 4) < 4:
            yield f"A solid with flat faces has at least 4 {name}."
    if given.get("edges", 6) < 6:
        yield "A solid with flat faces has at least 6 edges."
    if len(given) == 1:
        yield f"No solid with flat faces has just {given['edges']} edges."
        return
    faces = given.get("faces", given.get("edges", 0) - given.get("vertices", 0) + 2)
    vertices = given.get("vertices", given.get("edges", 0) - faces + 2)
    edges = given.get("edges", faces + vertices - 2)
    if faces + vertices - edges != 2:
        sums = f"{faces} + {vertices} = {faces + vertices} and {faces + vertices} less {edges}"
        yield f"Faces and vertices together are always 2 more than the edges; here {sums} is not 2."
    for name, count in (("faces", faces), ("vertices", vertices)):
        if count < 4:
            sums = f"{edges} + 2 = {edges + 2}"
            yield f"Faces and vertices together are 2 more than the edges: {sums}. That leaves fewer than 4 {name}."
    so = "" if len(given) == 3 else f"There would be {faces} faces, {edges} edges and {vertices} vertices. "
    for name, count in (("face has", faces), ("vertex joins", vertices)):
        if 3 * count > 2 * edges:
            yield f"{so}Each {name} at least 3 edges: 3 × {count} = {3 * count}; each edge counts twice: 2 × {edges} = {2 * edges}."
    yield f"{so}That cannot be."
