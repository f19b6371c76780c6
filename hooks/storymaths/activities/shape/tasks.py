"""The tasks about shapes, one schema each, named after the field that asks, and what their answers are."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Annotated, ClassVar, Literal, Self

from pydantic import Field

from ...model.fields import Text
from ...model.plain import Plain
from ...model.practice.shape import Property
from ..given import Castless
from ..kind import ActivityFields
from ..sort.rules import SortRule
from ..sort.tasks import Placing
from .claims import Claim
from .mirror import Edge

Drawn = Literal["pieces", "squares", "outline"]


class _OfShapes(ActivityFields):
    shapes: Literal["flat", "solid"] | Annotated[tuple[Text, ...], Field(min_length=1, max_length=24)] | None = None
    """Names from the set of shapes, all flat or all solid; or all of a sort. With a cast, ``fact`` names their shapes."""
    turned: bool = False
    """Whether they are drawn any way up, and not as they usually stand."""


class CountTask(_OfShapes):
    """How many sides, corners, faces and so on each shape has."""

    task_name: ClassVar[str] = "count"
    count: tuple[Property, ...] = ()
    """What to count on each."""

    def with_count(self, count: tuple[Property, ...]) -> Self:
        """The same shapes with something else counted."""
        return self.model_copy(update={"count": count})


class NameTask(_OfShapes):
    """What each shape is called, whichever way up it lies."""

    task_name: ClassVar[str] = "name"
    name: Literal["plain", "full"]
    """Whether ``triangle`` will do (``plain``), or the whole name is wanted: ``isosceles triangle`` (``full``)."""


class SortTask(_OfShapes):
    """Shapes sorted by what they have."""

    task_name: ClassVar[str] = "by"
    by: Annotated[tuple[Text | SortRule, ...], Field(min_length=1, max_length=2)]
    """One rule or two to sort by, such as ``sides > 3``, ``symmetry = 0``, ``curved``, ``faces = 6``."""
    diagram: Literal["hoop", "venn", "carroll"] | None = None
    """What to sort into; when left out, a hoop for one rule and a Venn diagram for two."""


class ClueTask(_OfShapes):
    """Which of the shapes somebody can be thinking of."""

    task_name: ClassVar[str] = "clues"
    clues: Annotated[tuple[Text, ...], Field(min_length=1, max_length=6)]
    """Rules that the shape thought of fits: which of the shapes can it be?"""


class ClaimTask(Castless):
    """Whether there can be a shape like that."""

    task_name: ClassVar[str] = "claims"
    claims: Annotated[tuple[Claim, ...], Field(min_length=1, max_length=12)]
    """Counts somebody says a shape has: can that be?"""


class HalfTask(Castless):
    """Half a figure on squares, to be completed over a mirror line."""

    task_name: ClassVar[str] = "half"
    half: Annotated[tuple[Text, ...], Field(min_length=1, max_length=40)]
    """Half a figure on squares, row by row: x is shaded, a full stop is empty."""
    mirror: Edge = "right"
    """The edge of the half that the mirror line runs along."""


class MakeTask(Castless):
    """A shape to be made of smaller ones."""

    task_name: ClassVar[str] = "make"
    make: Annotated[tuple[Text, ...], Field(min_length=1, max_length=40)]
    """A shape to make, row by row: x is a square, ◣ ◢ ◤ ◥ are halves of one, a full stop is empty."""
    pieces: Annotated[Mapping[Text, Annotated[int, Field(ge=1)]], Field(max_length=10)] = Field(default_factory=dict)
    """What to make it of, and how many of each there are."""
    use: Literal["all", "some"] = "all"
    """Whether every piece is to be used, or some may be left over."""
    drawn: Drawn = "squares"
    """What is drawn inside the shape to make: the ``pieces`` of one way, the ``squares``, or just the ``outline``."""

    def with_drawn(self, drawn: Drawn) -> Self:
        """The same shape with more or less drawn in."""
        return self.model_copy(update={"drawn": drawn})


ShapeTask = CountTask | NameTask | SortTask | ClueTask | ClaimTask | HalfTask | MakeTask
TASKS: tuple[type[ShapeTask], ...] = (CountTask, NameTask, SortTask, ClueTask, ClaimTask, HalfTask, MakeTask)


@dataclass(frozen=True, slots=True)
class Counts:
    """What a shape has, in the order asked for."""

    shape: str
    counts: Mapping[str, int]

    def as_plain(self) -> Plain:
        """``{shape: cube, faces: 6}``."""
        return {"shape": self.shape, **self.counts}


@dataclass(frozen=True, slots=True)
class ShapeName:
    """What the shape under a letter is called."""

    letter: str
    shape: str


@dataclass(frozen=True, slots=True)
class Fitting:
    """A shape that fits every clue."""

    shape: str


@dataclass(frozen=True, slots=True)
class Verdict:
    """Whether a claim, by its number from 1, can be, and the shapes of the set that show it."""

    claim: int
    can: bool
    shapes: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class WholeFigure:
    """A figure completed, and how many of its squares are shaded."""

    rows: tuple[str, ...]
    squares: int


@dataclass(frozen=True, slots=True)
class LaidPiece:
    """A piece and the squares it lies on."""

    piece: str
    on: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Covering:
    """One way to make a shape."""

    pieces: tuple[LaidPiece, ...]


ShapeAnswer = Counts | ShapeName | Placing | Fitting | Verdict | WholeFigure | Covering
