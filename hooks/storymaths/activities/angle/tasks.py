"""What can be asked about angles, a schema for each task, and what its answers hold."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Annotated, ClassVar, Literal, Self

from pydantic import Field

from ..fraction.number import Written
from ..given import Castless

Degrees = Annotated[int, Field(ge=1, le=359, strict=True)]
Around = Literal["right angle", "straight line", "point"]
WHOLE_TURN, RIGHT = 360, 90
TOTALS: Mapping[Around, int] = {"right angle": 90, "straight line": 180, "point": 360}
"""What angles side by side come to, in degrees."""


class NameAngles(Castless):
    """What sort of angle each is."""

    task_name: ClassVar[str] = "name"
    find: Literal["name"] = "name"
    angles: Annotated[tuple[Degrees, ...], Field(min_length=1, max_length=12)]
    """How large each is, in degrees; a year that has not met degrees sees the drawings alone."""


class MeasureTurns(Castless):
    """How large parts of a whole turn are."""

    task_name: ClassVar[str] = "turns"
    find: Literal["turns"] = "turns"
    turns: Annotated[tuple[Written, ...], Field(min_length=1, max_length=12)]
    """Parts of a whole turn, such as ``[1/4, 1/2, 1]``."""


class _MissingAngle(Castless):
    known: Annotated[tuple[Degrees, ...], Field(max_length=8)] = ()
    """The angles that are known, in degrees."""
    equal: Annotated[int, Field(ge=1, le=8, strict=True)] = 1
    """How many are missing; if several, they are equal."""

    def with_known(self, known: tuple[int, ...]) -> Self:
        """Other angles."""
        return self.model_copy(update={"known": known, "ask": None})


class FindAround(_MissingAngle):
    """The missing angle in a right angle, on a straight line or round a point."""

    task_name: ClassVar[str] = "around"
    find: Literal["around"] = "around"
    place: Around = "straight line"
    """Where the angles stand side by side."""

    @property
    def total(self) -> int:
        """What all of them come to."""
        return TOTALS[self.place]


class FindInShape(_MissingAngle):
    """The missing angle in a shape with so many straight sides."""

    task_name: ClassVar[str] = "shape"
    find: Literal["shape"] = "shape"
    sides: Annotated[int, Field(ge=3, le=12, strict=True)] = 3
    """How many straight sides the shape has."""

    @property
    def total(self) -> int:
        """What all of them come to: as many triangles as there are sides, less two."""
        return 180 * (self.sides - 2)


MissingTask = FindAround | FindInShape
AngleTask = NameAngles | MeasureTurns | MissingTask
AngleName = Literal["acute", "right", "obtuse", "straight", "reflex"]


def name_of(degrees: int) -> AngleName:
    """What an angle is called."""
    if degrees in (RIGHT, 180):
        return "right" if degrees == RIGHT else "straight"
    return "acute" if degrees < RIGHT else "obtuse" if degrees < 180 else "reflex"


@dataclass(frozen=True, slots=True)
class Named:
    """An angle by its letter, and what sort it is."""

    angle: str
    degrees: int
    name: AngleName


@dataclass(frozen=True, slots=True)
class Turned:
    """A part of a whole turn, in degrees."""

    turn: str
    degrees: int


@dataclass(frozen=True, slots=True)
class Missing:
    """The angle that was missing; each of them where they are several."""

    degrees: Fraction

    def as_plain(self) -> Mapping[str, int | str]:
        """A whole number of degrees as such."""
        whole = self.degrees.denominator == 1
        return {"degrees": self.degrees.numerator if whole else str(self.degrees)}


AngleAnswer = Named | Turned | Missing
