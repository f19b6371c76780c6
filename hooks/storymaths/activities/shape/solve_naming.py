"""What shapes are called, each under a letter in place of its name."""

from __future__ import annotations

from string import ascii_uppercase

from ...expression.noun import with_article
from ...model.activity import Answer, LikelyError, Line, Solution, Task
from ..saying import capital, counted, listed
from .named_shapes import Shapes
from .set import SAID, Flat, Solid, parts_of
from .tasks import NameTask, ShapeName


def name_shapes(task: NameTask, shapes: Shapes) -> Solution[ShapeName]:
    """The name of each shape, in the order given: a step for each."""
    letters = ascii_uppercase[: len(shapes.shapes)]
    names = [_name(shape.name, task.name == "plain") for shape in shapes.shapes]
    what = [_describe(shape) for shape in shapes.shapes]
    alt = "Shapes without their names. " + " ".join(
        f"{letter}: {told}." for letter, told in zip(letters, what, strict=True)
    )
    square = next((letter for letter, name in zip(letters, names, strict=True) if name == "square"), None)
    return Solution(
        Task(
            "What is each shape called?",
            lines=tuple(Line((f"{letter}: ", "")) for letter in letters),
            figures=(shapes.draw_as(letters, alt),),
        ),
        tuple(
            Answer(f"{letter}: {name}", f"{capital(with_article(name))} has {told}.", ShapeName(letter, name))
            for letter, name, told in zip(letters, names, what, strict=True)
        ),
        shapes.demands(()),
        len(letters),
        "Turn the page: the shape and its name stay the same.",
        LikelyError("Knows a square only on a level side.", f"“Diamond” for {square}.")
        if square and task.turned
        else None,
        (
            shapes.draw_as(
                [f"{letter}: {name}" for letter, name in zip(letters, names, strict=True)], f"{listed(names)}."
            ),
        ),
    )


def _name(name: str, plain: bool) -> str:
    """Its name, or what any shape of its sort is called: the last word of a flat one."""
    return name.rpartition(" ")[2] if plain else name


def _describe(shape: Flat | Solid) -> str:
    """What can be counted on it at any age; of a curved shape that it is."""
    if shape.curved:
        return "a curved surface" if isinstance(shape, Solid) else "a curved side"
    wanted = ("faces", "vertices") if isinstance(shape, Solid) else ("sides", "corners")
    parts = parts_of(shape)
    return listed([counted(sum(parts[prop] or ()), SAID[prop]) for prop in wanted])
