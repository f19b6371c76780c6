"""What can be asked about points on squared paper with two axes, a schema for each task, and the answers."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Annotated, ClassVar, Literal

from pydantic import Field

from ...model.fields import Text
from ..given import Castless

Place = Annotated[int, Field(ge=-20, le=20, strict=True)]
Point = tuple[Place, Place]
Points = Annotated[Mapping[Annotated[Text, Field(max_length=12)], Point], Field(min_length=1, max_length=12)]


class _OfPoints(Castless):
    points: Points
    """Points by their letters: ``{A: [2, 3]}``, along first and then up."""
    joined: bool = False
    """Whether they are joined to a shape, in their order."""


class ReadPoints(_OfPoints):
    """The coordinates of points that are drawn."""

    task_name: ClassVar[str] = "read"
    find: Literal["read"] = "read"


class PlotPoints(_OfPoints):
    """Points to be drawn at their coordinates."""

    task_name: ClassVar[str] = "plot"
    find: Literal["plot"] = "plot"


class TranslatePoints(_OfPoints):
    """Where points are after they have moved."""

    task_name: ClassVar[str] = "translate"
    find: Literal["translate"] = "translate"
    by: Point
    """So many to the right and so many up; to the left and down below nought."""


class FindTranslation(_OfPoints):
    """How one point must move to get to another: two points, from the first to the second."""

    task_name: ClassVar[str] = "translation"
    find: Literal["translation"] = "translation"


class ReflectPoints(_OfPoints):
    """Where points are after a reflection in an axis."""

    task_name: ClassVar[str] = "reflect"
    find: Literal["reflect"] = "reflect"
    axis: Literal["x", "y"]
    """The mirror line: x or y."""


class FindCorner(_OfPoints):
    """The fourth corner of a four-sided shape whose other three are given, going round it."""

    task_name: ClassVar[str] = "corner"
    find: Literal["corner"] = "corner"
    shape: Literal["square", "rectangle", "parallelogram"] = "rectangle"
    """The shape whose last corner is missing."""


CoordinatesTask = ReadPoints | PlotPoints | TranslatePoints | FindTranslation | ReflectPoints | FindCorner


@dataclass(frozen=True, slots=True)
class PointAt:
    """A point, and where it is."""

    point: str
    at: tuple[int, int]


@dataclass(frozen=True, slots=True)
class Translation:
    """So many to the right and so many up; to the left and down below nought."""

    right: int
    up: int


CoordinatesAnswer = PointAt | Translation
