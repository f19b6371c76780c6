"""Why a shape with stated counts cannot be, in words a pupil can check, and what following them demands."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from ...model.demands import Demands, amounts, number_sentences, operation
from ...model.year import YearLimits
from ..saying import counted
from .claims import Claim, right_angles_can_be, solids_that_can_be


@dataclass(frozen=True, slots=True)
class Objection:
    """A reason as a person says it, and what it demands of a child beyond the counts claimed."""

    says: str
    demands: Demands = field(default_factory=Demands)


def find_objection(claim: Claim, year: YearLimits) -> Objection | None:
    """The first reason why no shape has these counts; None where none is known."""
    return next(_against_solid(claim.given) if claim.solid else _against_flat(claim.given, year), None)


def _against_flat(given: Mapping[str, int], year: YearLimits) -> Iterator[Objection]:
    """Reasons why no shape with straight sides has these counts."""
    sides, right = given.get("sides", given.get("corners")), given.get("right_angles", 0)
    if sides is None:
        if right and not any(right_angles_can_be(n, right) for n in range(3, 400)):
            yield Objection("No number of sides allows so many right angles.")
        return
    if given.get("corners", sides) != sides:
        yield Objection("With straight sides there are as many corners as sides.")
    if sides < 3:
        yield Objection("With fewer than 3 straight sides nothing is closed in.", Demands(amounts([3])))
    lines = given.get("symmetry", 0)
    if lines and sides % lines:
        uneven = f"{sides} sides cannot be shared out evenly between {lines} lines"
        yield Objection(f"Lines of symmetry share the sides out evenly, and {uneven}.")
    if not right_angles_can_be(sides, right):
        yield _object_to_angles(sides, right, year)


def _object_to_angles(sides: int, right: int, year: YearLimits) -> Objection:
    if not year.practice.shape.angle_sums or right > sides:
        return Objection(
            f"With {counted(right, 'right angles')} the {sides} sides do not close up: try it with strips."
        )
    total, taken, others = 180 * (sides - 2), 90 * right, sides - right
    rest = total - taken
    products = operation("×", 180, sides - 2, total), operation("×", right, 90, taken)
    sums = f"The angles come to 180 × {sides - 2} = {total} degrees, and {right} × 90 = {taken}"
    if rest <= 0 or not others:
        wrong = "leaves nothing for the rest" if rest == 0 else "is not the same" if rest > 0 else "is too many"
        return Objection(f"{sums}, which {wrong}.", number_sentences(*products))
    left = f"{total} − {taken} = {rest} is left for {counted(others, 'other corners')}"
    demands = number_sentences(*products, operation("−", total, taken, rest)) | Demands(amounts([others]))
    return Objection(f"{sums}; {left}, which cannot be.", demands)


def _against_solid(given: Mapping[str, int]) -> Iterator[Objection]:
    """Reasons why no solid with flat faces, without dents or holes, has these counts."""
    if next(solids_that_can_be(dict(given)), None):
        return
    for name, fewest in (("faces", 4), ("vertices", 4), ("edges", 6)):
        if given.get(name, fewest) < fewest:
            yield Objection(f"A solid with flat faces has at least {fewest} {name}.", Demands(amounts([fewest])))
    if len(given) == 1:
        yield Objection(f"No solid with flat faces has just {given['edges']} edges.")
        return
    faces = given.get("faces", given.get("edges", 0) - given.get("vertices", 0) + 2)
    vertices = given.get("vertices", given.get("edges", 0) - faces + 2)
    edges = given.get("edges", faces + vertices - 2)
    if faces + vertices - edges != 2:
        sums = f"{faces} + {vertices} = {faces + vertices} and {faces + vertices} less {edges}"
        yield Objection(
            f"Faces and vertices together are always 2 more than the edges; here {sums} is not 2.",
            number_sentences(operation("+", faces, vertices, faces + vertices)) | Demands(amounts([2])),
        )
    for name, count in (("faces", faces), ("vertices", vertices)):
        if count < 4:
            sums = f"{edges} + 2 = {edges + 2}"
            yield Objection(
                f"Faces and vertices together are 2 more than the edges: {sums}. That leaves fewer than 4 {name}.",
                number_sentences(operation("+", edges, 2, edges + 2)) | Demands(amounts([4])),
            )
    so = "" if len(given) == 3 else f"There would be {faces} faces, {edges} edges and {vertices} vertices. "
    met = Demands(amounts([faces, edges, vertices]))
    for name, count in (("face has", faces), ("vertex joins", vertices)):
        if 3 * count > 2 * edges:
            twice = f"3 × {count} = {3 * count}; each edge counts twice: 2 × {edges} = {2 * edges}"
            products = operation("×", 3, count, 3 * count), operation("×", 2, edges, 2 * edges)
            leans = met | number_sentences(*products) | Demands(tables=frozenset({2, 3}))
            yield Objection(f"{so}Each {name} at least 3 edges: {twice}.", leans)
    yield Objection(f"{so}That cannot be.", met)
