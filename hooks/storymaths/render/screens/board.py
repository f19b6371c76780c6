"""A board: pieces a class puts in places together, and which ways of placing them are answers."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import asdict, dataclass, field
from typing import Any, Literal

ENDLESS = None
"""Copies of a piece that never runs out."""

Layout = Literal["beam", "rings", "venn", "carroll", "rows", "slots", "sentence", "clock", "squares", "points", "line"]
Mark = Literal[
    "blocked", "shaded", "goal", "up", "right", "down", "left", "mirror-right", "mirror-below",
    "across-axis", "up-axis", "between",
]  # fmt: skip
"""What a place of a grid shows before anything lies on it; a way faced marks the start."""
Placing = Mapping[str, Sequence[str]]
"""Pieces by place, each named by id and as often as it stands there."""


@dataclass(frozen=True, slots=True)
class Piece:
    """Something to pick up."""

    id: str
    name: str
    """What it is called, and what stands on it."""
    picture: str = ""
    """Source of a drawing inside ``content/``."""
    shows: str = ""
    """What its card carries beside its name."""
    copies: int | None = 1
    """How many there are; None when it never runs out."""
    sort: str = ""
    """Only places that take this sort hold it; empty for any."""
    worth: int = 0
    """What it weighs on a beam."""
    look: Literal["card", "counter", "coin", "weight", "point", "shade", "bar"] = "card"
    """What it is: a card with words, one of many counters alike, a coin, a weight, a point by its letter, or a square to
    shade; a bar reaches down from its place to the foot of its column."""
    stays: bool = False
    """Whether it stands in its place from the start, and is not moved."""
    outline: str = ""
    """The course of a shape's outline, a hundred across."""


@dataclass(frozen=True, slots=True)
class Place:
    """Somewhere to put pieces."""

    id: str
    name: str
    holds: int | None = None
    """The most pieces it takes; None for any number."""
    in_order: bool = False
    """Whether it matters in which order they stand."""
    takes: str = ""
    turn: int = 0
    """Degrees clockwise from the top, on a clock."""
    marks: tuple[Mark, ...] = ()


@dataclass(frozen=True, slots=True)
class Board:
    """One thing to do together. What it accepts is what the activity's solution found, and nothing else."""

    layout: Layout
    says: str
    """What is asked, where the activity's own question does not say it all."""
    pieces: tuple[Piece, ...]
    places: tuple[Place, ...]
    answers: Mapping[str, int]
    """The number of the answer, by each key that is one; mirror images share a number."""
    empty_matters: bool = True
    """Whether an empty place counts where it stands; if not, it is passed over."""
    between: tuple[str, ...] = field(default=())
    """In a sentence, the words before the first place, between the places and after the last."""
    columns: tuple[str, ...] = ()
    """On a grid or a line, what stands below each column; the places go row by row from the top."""
    rows: tuple[str, ...] = ()
    """On a grid, what stands before each row."""
    start: Mapping[str, Sequence[str]] = field(default_factory=dict)
    """The pieces that stay, by their places."""

    @property
    def count(self) -> int:
        """How many answers there are."""
        return len(set(self.answers.values()))

    def as_data(self) -> dict[str, Any]:
        """The board as the page carries it."""
        return asdict(self)


def key_of(places: Iterable[Place], placing: Placing, empty_matters: bool = True) -> str:
    """A placing as text, the same for two that are the same to the activity. The board in the browser makes it too."""
    parts = []
    for place in places:
        there = list(placing.get(place.id, ()))
        if there or empty_matters:
            parts.append(",".join(there if place.in_order else sorted(there)))
    return "|".join(parts)


def keyed(places: Sequence[Place], found: Iterable[Iterable[Placing]], empty_matters: bool = True) -> dict[str, int]:
    """The keys of answers, each of which may be placed in several ways."""
    return {key_of(places, way, empty_matters): number for number, ways in enumerate(found) for way in ways}


def placings(board: Board) -> Iterator[tuple[int, dict[str, list[str]]]]:
    """Each answer's number and a way to place it: what stands where, place by place."""
    for key, number in board.answers.items():
        parts = [part.split(",") if part else [] for part in key.split("|")]
        yield number, {place.id: part for place, part in zip(board.places, parts, strict=False)}
