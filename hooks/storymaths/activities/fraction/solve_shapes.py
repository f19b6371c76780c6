"""Fractions of shapes: how much of each is shaded, and which show a given fraction, equal parts or not."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from math import gcd
from string import ascii_uppercase

from ...expression.number import WrittenNumber
from ...model.activity import Answer, Figure, LikelyError, Line, Solution, Task
from ...model.demands import Demands
from ...model.figures.fractions import ShapeInParts
from ..kind import Unsolvable
from . import say_shapes as say
from .answers import ShapePart
from .demands import EQUAL_PARTS, demands_of_numbers, demands_of_words, demands_of_written
from .drawing import cards_for_written
from .number import as_amount, rewrite
from .shape_in_parts import FractionShape
from .tasks import ShapeTask

NamedShape = tuple[str, FractionShape]


def find_shaded(task: ShapeTask) -> Solution[ShapePart]:
    """The shaded fraction of each shape, in order; with ``fraction``, only the shapes that show it."""
    named = [(shape.name or ascii_uppercase[i % 26], shape) for i, shape in enumerate(task.shapes)]
    _check_shaded(named)
    wanted = task.fraction.value if task.fraction else None
    shown = [one for one in named if wanted is None or one[1].fraction == wanted]
    found = [_find(name, shape, task) for name, shape in shown]
    cuts = [count_shaded(shape) for _, shape in shown]
    return Solution(
        task=Task(
            say.ask_for_shaded(task),
            lines=tuple(Line((f"{name}: ", "")) for name, _ in named) if wanted is None else (),
            figures=tuple(_draw(name, shape) for name, shape in named),
        ),
        answers=tuple(
            Answer(say.say_shaded(one), say.explain_shaded(shape, one, cut, total), one)
            for (_, shape), one, (cut, total) in zip(shown, found, cuts, strict=True)
        ),
        demands=_demands(task, found, cuts),
        steps=1 if all(shape.in_equal_parts for _, shape in named) else 2,
        note=say.note_on_shapes(shape for _, shape in named),
        likely_error=_count_wrongly(named, wanted),
        cards=cards_for_written([one.written or as_amount(one.fraction) for one in found if _in_figures(one)], {}),
    )


def _check_shaded(named: Sequence[NamedShape]) -> None:
    for index, (name, shape) in enumerate(named):
        if len(shape.shares) > len(shape.sizes) or any(share > 1 for share in shape.shares):
            message = f"More of shape {name} is shaded than there is of it."
            raise Unsolvable(("shapes", index, "shaded"), message, "shade no more than all of its parts.")


def _find(name: str, shape: FractionShape, task: ShapeTask) -> ShapePart:
    form = task.written_as
    return ShapePart(name, shape.fraction, rewrite(as_amount(shape.fraction), form, ("shapes",)) if form else None)


def count_shaded(shape: FractionShape) -> tuple[Fraction, int]:
    """How many equal parts are shaded, the shape being cut so finely, and how many there are."""
    total = sum(shape.sizes) // gcd(*shape.sizes)
    return shape.fraction * total, total


def _in_figures(one: ShapePart) -> bool:
    return one.written is not None or say.is_in_figures(one.fraction)


def _demands(task: ShapeTask, found: Sequence[ShapePart], cuts: Sequence[tuple[Fraction, int]]) -> Demands:
    demands = demands_of_numbers([task.fraction.value] if task.fraction else [])
    for one, (cut, total) in zip(found, cuts, strict=True):
        told = [WrittenNumber.over(int(cut), total)] if cut.denominator == 1 else []
        simpler = any(number.text != as_amount(one.fraction).text for number in told)
        demands |= demands_of_numbers([one.fraction, cut, total])
        demands |= demands_of_written([*told, *([one.written] if one.written else [])])
        demands |= Demands(signs=frozenset("=" if simpler else ""))
    said = [one.fraction for one in found if one.written is None and one.fraction]
    asked = {"percent": (), "decimal": ("decimal",)}.get(task.written_as or "fraction", ("fraction",))
    return demands | demands_of_words(
        [*said, *([task.fraction.value] if task.fraction else [])],
        *(asked if task.fraction is None else ()),
        *(EQUAL_PARTS if found else ()),
    )


def _count_wrongly(named: Sequence[NamedShape], wanted: Fraction | None) -> LikelyError | None:
    """Counting parts without looking at their sizes, where that gives something else."""
    for name, shape in named:
        if any(share not in (0, 1) for share in shape.shares):
            continue
        by_count = Fraction(int(sum(shape.shares)), len(shape.sizes))
        if by_count != shape.fraction and (wanted is None or wanted in (by_count, shape.fraction)):
            return say.expect_counting(name, by_count)
    return None


def _draw(name: str, shape: FractionShape) -> Figure:
    return Figure(ShapeInParts(name, shape.form, shape.sizes, shape.shares), say.describe_shape(name, shape))
