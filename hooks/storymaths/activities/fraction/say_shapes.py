"""Shaded shapes, in words."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from ...model.activity import LikelyError
from ..saying import capital, listed, mixed, number_word, spoken
from .answers import ShapePart
from .drawing import count_parts
from .shape_in_parts import FractionShape
from .tasks import ShapeTask


def ask_for_shaded(task: ShapeTask) -> str:
    """How much of each, or which show a fraction."""
    if task.fraction:
        return f"Which shapes have {spoken(task.fraction.value)} shaded?"
    what = "percentage" if task.written_as == "percent" else task.written_as or "fraction"
    return f"What {what} of each shape is shaded?"


def note_on_shapes(shapes: Iterable[FractionShape]) -> str:
    """That each was looked at, and how where parts are not equal."""
    measured = any(not shape.in_equal_parts for shape in shapes)
    return (
        f"Each shape was looked at{', and parts of different sizes were measured by the smallest' if measured else ''}."
    )


def is_in_figures(fraction: Fraction) -> bool:
    """Whether so much of a shape is said in figures, as 7/16 is."""
    return 0 < fraction < 1 and spoken(fraction) == mixed(fraction)


def say_shaded(one: ShapePart) -> str:
    """``Shape A: a quarter of it is shaded``."""
    return f"Shape {one.shape}: {one.written.text if one.written else _say_part(one.fraction)} of it is shaded"


def _say_part(fraction: Fraction) -> str:
    return spoken(fraction) if 0 < fraction < 1 else "all" if fraction else "none"


def explain_shaded(shape: FractionShape, one: ShapePart, cut: Fraction, total: int) -> str:
    """How many equal parts there are and how many of them are shaded, then the fraction in other forms."""
    told = f"{cut}/{total}" if cut.denominator == 1 else mixed(one.fraction)
    lowest = "" if told == mixed(one.fraction) else f", and {told} = {mixed(one.fraction)}"
    has = "It has" if shape.in_equal_parts else "Its parts are not all equal. Cut again, it has"
    shaded = f"{mixed(cut)} of {'it' if total == 1 else 'them'} {'is' if cut <= 1 else 'are'} shaded"
    form = f" That is {one.written.text}." if one.written else ""
    return f"{has} {count_parts(total)}, and {shaded}: {told}{lowest}.{form}"


def expect_counting(name: str, by_count: Fraction) -> LikelyError:
    """Counting parts that are not equal."""
    counted = spoken(by_count) if by_count else "none"
    does = "Counts the parts without looking whether they are equal."
    return LikelyError(does, f"{counted} of shape {name}, whose parts are not equal.")


def describe_shape(name: str, shape: FractionShape) -> str:
    """The drawing in words."""
    shaded = [number_word(i + 1) for i, share in enumerate(shape.shares) if share]
    sizes = "equal" if shape.in_equal_parts else f"sized {listed([str(size) for size in shape.sizes])}"
    parts = f"{len(shape.sizes)} parts, {sizes}" if len(shape.sizes) > 1 else "1 part"
    told = f"shaded: part {listed(shaded)}" if shaded else "none is shaded"
    return capital(f"Shape {name}, a {shape.form} in {parts}; {told}.")
