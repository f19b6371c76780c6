"""Perimeters in words and drawings."""

from __future__ import annotations

from collections.abc import Sequence

from ...expression.noun import with_article
from ...model.activity import Figure, LikelyError
from ...model.figures.shapes import SidedShape, SquaredShape
from ...model.year import YearLimits
from ..saying import capital, listed, number_word
from .amount import Amount, tell, tell_as_given

_NAMES = {3: "triangle", 4: "quadrilateral", 5: "pentagon", 6: "hexagon", 7: "heptagon", 8: "octagon"}
_ASK = "What is its perimeter?"


def name_shape(sides: int) -> str:
    """What a shape with so many sides is called."""
    return _NAMES[sides]


def ask_by_sides(name: str, given: Sequence[Amount], year: YearLimits) -> str:
    """What is known of the sides."""
    told = [tell_as_given(one, year) for one in given]
    if name == "rectangle":
        long, wide = told
        return f"A rectangle is {long} long and {wide} wide. {_ASK}"
    if name == "square":
        return f"Each side of a square is {told[0]}. {_ASK}"
    if len(given) == 1:
        return f"Each side of this {name} is {told[0]}. {_ASK}"
    return f"{capital(with_article(name))} has sides of {listed(told)}. {_ASK}"


def ask_on_squares(side: Amount, year: YearLimits) -> str:
    """How large a square is."""
    return f"Each small square has sides of {tell_as_given(side, year)}. What is the perimeter of the whole shape?"


def draw_sides(name: str, sides: Sequence[Amount], given: Sequence[Amount], year: YearLimits) -> Figure:
    """The shape with the lengths that are given beside it."""
    told = [tell_as_given(one, year) for one in given]
    labels = (*told, *[""] * (len(sides) - len(told)))
    known = (
        f"all {number_word(len(sides))} sides equal, one marked {told[0]}"
        if len(told) == 1
        else f"sides marked {listed(told)}"
    )
    return Figure(
        SidedShape(tuple(one.number for one in sides), labels), f"{capital(with_article(name))} with {known}."
    )


def draw_squares(rows: Sequence[str], side: Amount, year: YearLimits) -> Figure:
    """The shape on its squares."""
    told = "; ".join(
        f"row {n}: {' '.join('square' if mark == 'x' else 'empty' for mark in row)}" for n, row in enumerate(rows, 1)
    )
    return Figure(
        SquaredShape(tuple(rows)),
        f"A shape made of squares with sides of {tell(side, year)}. {capital(told)}.",
    )


def say_perimeter(total: Amount, year: YearLimits) -> str:
    """``Its perimeter is 20 cm``."""
    return f"Its perimeter is {tell(total, year)}"


def expect_two_sides(once: Amount, year: YearLimits) -> LikelyError:
    """Adding the two lengths that are told."""
    return LikelyError("Adds the two lengths that are written, and leaves out the sides opposite.", tell(once, year))


def expect_side_left_out(without: Amount, year: YearLimits) -> LikelyError:
    """Losing the corner where the walk began."""
    return LikelyError("Loses the corner where it began, and leaves out a side.", tell(without, year))


def expect_squares_counted(squares: Amount, year: YearLimits) -> LikelyError:
    """Counting squares."""
    return LikelyError("Counts the squares, and not the sides round the edge.", tell(squares, year))
