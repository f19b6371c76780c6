"""A shape cut into parts, as its author gives it."""

from __future__ import annotations

from fractions import Fraction
from typing import Annotated, Literal, Self

from pydantic import Field

from ...model.fields import Strict, Text
from .number import Written

_MOST_PARTS = 24
PartSize = Annotated[int, Field(ge=1, le=100, strict=True)]


class FractionShape(Strict):
    """A shape cut into parts, and how much of each part is shaded."""

    form: Literal["bar", "circle"] = "bar"
    """bar or circle."""
    parts: (
        Annotated[int, Field(ge=1, le=_MOST_PARTS, strict=True)]
        | Annotated[tuple[PartSize, ...], Field(min_length=1, max_length=_MOST_PARTS)]
    )
    """How many equal parts, or the size of each part when they may differ."""
    shaded: Annotated[int, Field(ge=0, le=_MOST_PARTS, strict=True)] | tuple[Written, ...]
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

    @property
    def in_equal_parts(self) -> bool:
        """Whether its parts are all of one size."""
        return len(set(self.sizes)) == 1

    @property
    def in_whole_parts(self) -> bool:
        """Whether it is told as so many of so many equal parts."""
        return isinstance(self.parts, int) and isinstance(self.shaded, int)

    def with_shaded(self, shaded: int, parts: int) -> Self:
        """The shape in so many equal parts, so many of them shaded."""
        return self.model_copy(update={"parts": parts, "shaded": shaded})
