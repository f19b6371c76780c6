"""How many sides, corners, faces and so on the shapes of a task have."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from ...model.activity import Answer, LikelyError, Solution, Table, Task
from ..kind import Unsolvable
from ..saying import capital, counted, listed
from .set import SAID, Solid, count_of, parts_of_count, with_article
from .tasks import FLAT_COUNTS, SOLID_COUNTS, Shapes


def counted_solution(shapes: Shapes, properties: Sequence[str], ask: str | None) -> Solution:
    """The properties of each shape, in the order given."""
    year, known = shapes.context.year.year, SOLID_COUNTS if shapes.solid else FLAT_COUNTS
    for index, prop in enumerate(properties):
        if prop not in known:
            what = "Solids" if shapes.solid else "Flat shapes"
            fix = f"count {listed([SAID[name] for name in known], 'or')}."
            raise Unsolvable(("count", index), f"{what} have no {SAID[prop]} to count.", fix)
    answers = [count_answer(shapes, index, properties, year) for index in range(len(shapes.shapes))]
    asked = f"How many {listed([SAID[prop] for prop in properties])} has each shape?"
    task = Task(ask or asked, table=count_table(shapes, properties), figures=(shapes.figure(),))
    note = "Count on a real shape, with a finger or a sticker on each."
    if set(SOLID_COUNTS) <= set(properties):
        note = "On every one of them, faces and vertices together are 2 more than the edges."
    likely_error = count_slip(shapes, properties)
    return shapes.solution(task, answers, properties, steps=len(properties), note=note, likely_error=likely_error)


def count_answer(shapes: Shapes, index: int, properties: Sequence[str], year: int) -> Answer:
    """How many of each property a shape has, added from its parts. Raises ``Unsolvable`` where it is not counted."""
    shape, title = shapes.shapes[index], shapes.titles[index]
    told, sums = [], []
    data: dict[str, Any] = {"shape": shape.name}
    for prop in properties:
        count = count_of(shape, prop)
        if count is None:
            what = SAID[prop]
            fix = "leave this shape out, or ask for something else."
            raise Unsolvable(
                ("count",), f"The {what} of a {shape.name} are not counted here: see the set of shapes.", fix
            )
        one = {"vertices": "vertex", "symmetry": "line of symmetry"}.get(prop)
        told.append(counted(count, SAID[prop], one) if count else f"no {SAID[prop]}")
        parts = parts_of_count(shape, prop)
        adds = len(parts) > 1 and year
        sums.append(f"{' + '.join(map(str, parts))} = {count} {SAID[prop]}" if adds else told[-1])
        data[prop] = count
    why = capital(", ".join(sums)) if shapes.solid else f"Go round it with a finger: {', '.join(sums)}"
    return Answer(f"{capital(with_article(title))} has {listed(told)}.", f"{why}.", data)


def count_table(shapes: Shapes, properties: Sequence[str]) -> Table:
    """A row to fill for each shape."""
    heads = tuple(capital(SAID[prop]) for prop in properties)
    return Table(
        "What each shape has", ("Shape", *heads), tuple((title, *["___"] * len(heads)) for title in shapes.titles)
    )


def count_slip(shapes: Shapes, properties: Sequence[str]) -> LikelyError | None:
    """Ends and bases forgotten among faces; slanting lines taken for lines of symmetry."""
    for shape in shapes.shapes:
        if isinstance(shape, Solid) and "faces" in properties and shape.faces:
            few, total = shape.faces[1], sum(shape.faces)
            return LikelyError(
                "Counts the faces round the side only.", f"{few} faces for the {shape.name} in place of {total}."
            )
        if shape.name in ("rectangle", "parallelogram") and "symmetry" in properties:
            wrong = {"rectangle": 4, "parallelogram": 2}[shape.name]
            right = count_of(shape, "symmetry")
            return LikelyError(
                "Takes lines from corner to corner for mirror lines.",
                f"{wrong} for the {shape.name} in place of {right}.",
            )
    return None
