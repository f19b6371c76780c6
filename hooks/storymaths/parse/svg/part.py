"""A part of a drawing, of what the list of drawings lets through; and why the whole of one is refused."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field

ELSEWHERE = "it loads something from another place"


class Refused(Exception):
    """A drawing that cannot be used at all: the words for its author, and the line and column if they are known."""

    def __init__(self, detail: str, at: tuple[int, int] | None = None) -> None:
        super().__init__(detail)
        self.detail, self.at = detail, at


@dataclass(frozen=True, slots=True)
class Reference:
    """What a property or an ``href`` refers to within the drawing."""

    by: str
    to: str


@dataclass(slots=True)
class Part:
    """An element: its name, where it stands, its attributes as they are written again, and what is in it."""

    name: str
    at: tuple[int, int]
    """Line and column, from 1."""
    attributes: dict[str, str] = field(default_factory=dict)
    content: list[Part | str] = field(default_factory=list)
    refers: list[Reference] = field(default_factory=list)
    sets: set[str] = field(default_factory=set)
    """The properties it sets itself, which are then not those around it."""

    @property
    def parts(self) -> Iterator[Part]:
        """The elements in it."""
        return (inner for inner in self.content if isinstance(inner, Part))

    @property
    def words(self) -> str:
        """The text in it."""
        return "".join(inner for inner in self.content if isinstance(inner, str))

    def walk(self) -> Iterator[Part]:
        """Itself, and every element in it."""
        yield self
        for part in self.parts:
            yield from part.walk()
