"""Fractions of shapes: how much of each is shaded, and which show a given fraction, equal parts or not."""

from __future__ import annotations

from fractions import Fraction
from math import gcd
from string import ascii_uppercase
from typing import TYPE_CHECKING, Annotated, Literal

from pydantic import Field

from ...model.activity import Answer, Context, Figure, LikelyError, Solution, Task
from ...model.fields import Strict, Text
from ..kind import Unsolvable
from ..saying import capital, listed, mixed, number_word, plain, spoken
from .number import Written
from .words import WrittenAs, expressed, solution

if TYPE_CHECKING:
    from . import FractionFields

MOST_PARTS = 24
PartSize = Annotated[int, Field(ge=1, le=100, strict=True)]


class FractionShape(Strict):
    """A shape cut into parts, and how much of each part is shaded."""

    form: Literal["bar", "circle"] = "bar"
    parts: (
        Annotated[int, Field(ge=1, le=MOST_PARTS, strict=True)]
        | Annotated[tuple[PartSize, ...], Field(min_length=1, max_length=MOST_PARTS)]
    )
    """How many equal parts, or the size of each part when they may differ."""
    shaded: Annotated[int, Field(ge=0, le=MOST_PARTS, strict=True)] | tuple[Written, ...]
    """How many parts from the first on, or the share of each part from the first on: ``[1, 1, 1/2]``."""
    name: Text | None = None
    """What it is called; A, B, C … in order when left out."""

    @property
    def sizes(self) -> tuple[int, ...]:
        """The size of each part."""
        return (1,) * self.parts if isinstance(self.parts, int) else self.parts

    @property
    def shares(self) -> tuple[Fraction, ...]:
        """How much of each part is shaded, 0 to 1, as many as there are parts or more if its author erred."""
        given = (Fraction(1),) * self.shaded if isinstance(self.shaded, int) else tuple(w.value for w in self.shaded)
        return given + (Fraction(0),) * (len(self.sizes) - len(given))

    @property
    def fraction(self) -> Fraction:
        """The fraction of the whole shape that is shaded."""
        return sum((n * s for n, s in zip(self.sizes, self.shares, strict=True)), Fraction(0)) / sum(self.sizes)


def shape(fields: FractionFields, context: Context) -> Solution:
    """The shaded fraction of each shape, in order; with ``fraction``, only the shapes that show it."""
    named = [(item.name or ascii_uppercase[i % 26], item) for i, item in enumerate(fields.shapes)]
    for index, (name, item) in enumerate(named):
        if len(item.shares) > len(item.sizes) or any(share > 1 for share in item.shares):
            message = f"More of shape {name} is shaded than there is of it."
            raise Unsolvable(("shapes", index, "shaded"), message, "shade no more than all of its parts.")
    wanted = fields.fraction.value if fields.fraction else None
    answers = [
        _answer(name, item, fields.written_as) for name, item in named if wanted is None or item.fraction == wanted
    ]
    what = "percentage" if fields.written_as == "percent" else fields.written_as or "fraction"
    ask = f"What {what} of each shape is shaded?" if wanted is None else f"Which shapes have {spoken(wanted)} shaded?"
    figures = tuple(_figure(name, item) for name, item in named)
    task = Task(ask, lines=tuple(f"{name}: ___" for name, _ in named) if wanted is None else (), figures=figures)
    note = "Each shape was looked at, and parts of different sizes were measured by the smallest."
    steps = 1 if all(len(set(item.sizes)) == 1 for _, item in named) else 2
    return solution(task, answers, context, steps, note, _slip(named, wanted))


def _answer(name: str, item: FractionShape, written_as: WrittenAs | None) -> Answer:
    value, small = item.fraction, gcd(*item.sizes)
    total = sum(item.sizes) // small
    part = value * total
    told = f"{part}/{total}" if part.denominator == 1 else mixed(value)
    lowest = "" if told == mixed(value) else f", and {told} = {mixed(value)}"
    cut = "It has" if len(set(item.sizes)) == 1 else "Its parts are not all equal. Cut again, it has"
    worked = (
        f"{cut} {total} equal parts, and {mixed(part)} of them {'is' if part <= 1 else 'are'} shaded: {told}{lowest}."
    )
    text = spoken(value) if 0 < value < 1 else ("none" if not value else "all")
    if written_as:
        text = expressed(value, written_as, ("shapes",))
        worked += f" That is {text}."
    data = {"shape": name, "fraction": plain(value)} | ({"written": text} if written_as else {})
    return Answer(f"Shape {name}: {text} of it is shaded.", worked, data)


def _slip(named: list[tuple[str, FractionShape]], wanted: Fraction | None) -> LikelyError | None:
    """Counting parts without looking at their sizes, where that gives something else."""
    does = "Counts the parts without looking whether they are equal."
    for name, item in named:
        if any(share not in (0, 1) for share in item.shares):
            continue
        by_count = Fraction(int(sum(item.shares)), len(item.sizes))
        if by_count != item.fraction and (wanted is None or wanted in (by_count, item.fraction)):
            return LikelyError(does, f"{spoken(by_count) if by_count else 'none'} of shape {name}, which is not so")
    return None


def _figure(name: str, item: FractionShape) -> Figure:
    shaded = [number_word(i + 1) for i, share in enumerate(item.shares) if share]
    sizes = "equal" if len(set(item.sizes)) == 1 else f"sized {listed([str(n) for n in item.sizes])}"
    alt = (
        f"Shape {name}, a {item.form} in {len(item.sizes)} parts, {sizes}; "
        + (f"shaded: part {listed(shaded)}." if shaded else "none is shaded.")
    )  # fmt: skip
    data = {
        "name": name, "form": item.form, "sizes": list(item.sizes),
        "shares": [[share.numerator, share.denominator] for share in item.shares],
    }  # fmt: skip
    return Figure("fraction-shape", data, capital(alt))
