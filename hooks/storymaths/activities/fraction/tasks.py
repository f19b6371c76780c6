"""The tasks with fractions, one schema each."""

from __future__ import annotations

from fractions import Fraction
from typing import Annotated, ClassVar, Literal, Self

from pydantic import Field

from ...expression.number import WrittenNumber
from ...model.book import FactValue
from ...model.fields import Text
from ..given import Castless
from ..kind import ActivityFields, Exact
from .number import Written, WrittenAs
from .shape_in_parts import FractionShape

SomeNumbers = Annotated[tuple[Written, ...], Field(max_length=24)]
AtLeastOne = Annotated[tuple[Written, ...], Field(min_length=1, max_length=24)]
AtMostAHundred = Annotated[int, Field(ge=1, le=100, strict=True)]
UpToAThousand = Annotated[int, Field(ge=1, le=1000, strict=True)]
Mark = Annotated[int, Field(ge=0, le=100, strict=True)]


class _WithFraction(ActivityFields):
    fraction: Written
    """The fraction, such as ``3/4``."""

    def with_fraction(self, fraction: WrittenNumber) -> Self:
        """The task with another fraction, in the kind's own words: the author's name the old one."""
        return self.model_copy(update={"fraction": fraction, "ask": None})


class _WithThings(ActivityFields):
    things: Text | None = None
    """What is counted, in the plural: ``shells``."""


class PartTask(_WithFraction, _WithThings):
    """A fraction of one amount, or of what each of the cast has."""

    task_name: ClassVar[str] = "part"
    find: Literal["part"] = "part"
    of: Exact | None = None
    """The whole amount."""

    def with_each(self, fraction: WrittenNumber, each: int) -> Self:
        """Another fraction, so many being in one equal part."""
        changed = self.with_fraction(fraction)
        return changed.model_copy(update={"of": Fraction(each * fraction.value.denominator)})


class RestTask(_WithFraction, _WithThings, Castless):
    """What is left when a fraction has gone, and then perhaps more."""

    task_name: ClassVar[str] = "rest"
    find: Literal["rest"] = "rest"
    of: Exact
    """The whole amount."""
    taken: Annotated[tuple[Exact, ...], Field(max_length=6)] = ()
    """Amounts taken away after the fraction."""

    def with_each(self, fraction: WrittenNumber, each: int) -> Self:
        """Another fraction, so many being in one equal part; each amount taken after it is as much as is left."""
        over, under = fraction.value.as_integer_ratio()
        size = Fraction(each * (under - over) // (len(self.taken) + 1))
        changed = self.with_fraction(fraction)
        return changed.model_copy(update={"of": Fraction(each * under), "taken": (size,) * len(self.taken)})


class WholeTask(_WithFraction, _WithThings, Castless):
    """The whole, from a part of it or from what is not that part."""

    task_name: ClassVar[str] = "whole"
    find: Literal["whole"] = "whole"
    part: Exact | None = None
    """That fraction of an unknown whole."""
    rest: Exact | None = None
    """What is not that fraction of an unknown whole."""

    def with_each(self, fraction: WrittenNumber, each: int) -> Self:
        """Another fraction, so many being in one equal part."""
        over, under = fraction.value.as_integer_ratio()
        known = {"rest": Fraction(each * (under - over))} if self.part is None else {"part": Fraction(each * over)}
        return self.with_fraction(fraction).model_copy(update=known)


class ShareTask(_WithFraction):
    """Which counts have a fraction in whole things."""

    task_name: ClassVar[str] = "share"
    find: Literal["share"] = "share"
    counts: Annotated[tuple[UpToAThousand, ...], Field(max_length=100)] = ()
    """Counts to be shared, or not."""
    up_to: UpToAThousand | None = None
    """Every count from 1 to this."""

    def with_up_to(self, up_to: int) -> Self:
        """Another end to the counts."""
        return self.model_copy(update={"up_to": up_to})


class SetTask(ActivityFields):
    """What fraction of the cast fits."""

    task_name: ClassVar[str] = "set"
    find: Literal["set"] = "set"
    fact: Text
    has: FactValue | None = None
    """The value of the fact that counts as fitting; true when left out."""


class GroupsTask(_WithFraction, _WithThings):
    """Who together have a fraction of all there is."""

    task_name: ClassVar[str] = "groups"
    find: Literal["groups"] = "groups"
    fact: Text


class ShapeTask(Castless):
    """How much of each shape is shaded, or which show a fraction."""

    task_name: ClassVar[str] = "shape"
    find: Literal["shape"] = "shape"
    shapes: Annotated[tuple[FractionShape, ...], Field(min_length=1, max_length=12)]
    """The shapes, each in parts, and how much is shaded."""
    fraction: Written | None = None
    """The fraction that is looked for; of each shape when left out."""
    written_as: WrittenAs | None = None
    """How the answer is written: fraction, improper, mixed, decimal or percent."""

    def with_shapes(self, shapes: tuple[FractionShape, ...], fraction: WrittenNumber | None) -> Self:
        """Other shapes, and another fraction to look for."""
        return self.model_copy(update={"shapes": shapes, "fraction": fraction})


class EqualTask(Castless):
    """Which are worth the same: the pairs of a list, those equal to one, or all up to a number of parts."""

    task_name: ClassVar[str] = "equal"
    find: Literal["equal"] = "equal"
    numbers: SomeNumbers = ()
    """Numbers as written: fractions, decimals, percentages."""
    fraction: Written | None = None
    """Only those that are equal to this one."""
    up_to: UpToAThousand | None = None
    """The most parts a fraction may have."""

    def with_numbers(
        self, numbers: tuple[WrittenNumber, ...], fraction: WrittenNumber | None, up_to: int | None
    ) -> Self:
        """Other numbers to compare."""
        return self.model_copy(update={"numbers": numbers, "fraction": fraction, "up_to": up_to})


class OrderTask(Castless):
    """In what order numbers come."""

    task_name: ClassVar[str] = "order"
    find: Literal["order"] = "order"
    numbers: AtLeastOne
    """Fractions, decimals and percentages as they are written."""
    greatest_first: bool = False
    """true to begin with the greatest."""

    def with_numbers(self, numbers: tuple[WrittenNumber, ...]) -> Self:
        """Other numbers to order."""
        return self.model_copy(update={"numbers": numbers})


class LineTask(Castless):
    """Where numbers stand on a line, or which stand at its marks."""

    task_name: ClassVar[str] = "line"
    find: Literal["line"] = "line"
    parts: AtMostAHundred
    """How many equal parts the line is cut into."""
    numbers: SomeNumbers = ()
    """The numbers that are to be put on the line."""
    ends: tuple[Exact, Exact] = (Fraction(0), Fraction(1))
    """The numbers at the ends of the line."""
    marks: Annotated[tuple[Mark, ...], Field(max_length=24)] = ()
    """Marks to be read, counted from 0 at the start."""

    def with_numbers(self, numbers: tuple[WrittenNumber, ...], parts: int) -> Self:
        """Other numbers on a line in so many parts."""
        return self.model_copy(update={"numbers": numbers, "parts": parts})

    @property
    def step(self) -> Fraction:
        """How long one part of the line is."""
        return (self.ends[1] - self.ends[0]) / self.parts

    def number_at(self, mark: int) -> Fraction:
        """The number at a mark."""
        return self.ends[0] + mark * self.step

    def count_parts_to(self, number: Fraction) -> Fraction:
        """How many parts on from the start a number stands."""
        return (number - self.ends[0]) / self.step


class WriteTask(Castless):
    """How else numbers are written."""

    task_name: ClassVar[str] = "write"
    find: Literal["write"] = "write"
    numbers: AtLeastOne
    """Numbers as they are written."""
    written_as: WrittenAs | None = None
    """The form asked for, a fraction in lowest terms where left out; ``mixed`` and ``improper`` keep the parts: 6 2/4."""

    def with_numbers(self, numbers: tuple[WrittenNumber, ...]) -> Self:
        """Other numbers to write."""
        return self.model_copy(update={"numbers": numbers})


NumbersTask = ShapeTask | EqualTask | OrderTask | LineTask | WriteTask
"""Tasks of fractions that are of nothing but one whole."""
FractionTask = PartTask | RestTask | WholeTask | ShareTask | SetTask | GroupsTask | NumbersTask
