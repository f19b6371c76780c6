"""One file of content: what it says, where each value stands, and what could not be read in it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any, Generic, Literal, Protocol, TypeVar

from .book import Book, Story
from .home import Home
from .problem import Place
from .prose import Loc as Loc  # noqa: PLC0414 - part of what this module offers
from .prose import Prose
from .series import Page, Series
from .session import Session

Fields = Book | Story | Session | Home | Series | Page
F_co = TypeVar("F_co", bound=Fields, covariant=True)
FaultKind = Literal["broken", "kind", "unknown", "missing", "mistyped", "duplicate"]


@dataclass(frozen=True, slots=True)
class Fault:
    """Something in front matter that could not be taken as meant. Rules put it into words."""

    kind: FaultKind
    place: Place
    field: str
    detail: str = ""
    known: tuple[str, ...] = ()
    """Keys or values that would have been understood there."""


class Locator(Protocol):
    """Finds the line and column of values; made by the parser, asked only when a problem needs it."""

    def place(self, loc: Loc, within: str = "", nth: int = 0) -> Place:
        """The place of a value, or of the ``nth`` time some words stand within it."""


@dataclass(frozen=True)
class Document(Generic[F_co]):
    """A file of content that was understood."""

    path: str
    fields: F_co
    raw: Mapping[str, Any]
    body: str
    body_line: int
    prose: Prose
    locator: Locator = field(repr=False)
    faults: tuple[Fault, ...] = ()

    @property
    def folder(self) -> str:
        """The folder it stands in, as a path from the project root."""
        return self.path.rpartition("/")[0]

    def place(self, *loc: str | int, within: str = "") -> Place:
        """Where a value stands in the file."""
        return self.locator.place(loc, within)

    def place_in_prose(self, offset: int, words: str) -> Place:
        """Where ``words``, found at ``offset`` of the prose, stand in the file."""
        passage = self.prose.passage_at(offset)
        nth = self.prose.text.count(words, passage.start, offset)
        return self.locator.place(passage.loc, words, nth)


@dataclass(frozen=True)
class Unread:
    """A file whose front matter has faults that leave nothing to check further."""

    path: str
    raw: Mapping[str, Any]
    faults: tuple[Fault, ...]

    @property
    def folder(self) -> str:
        """The folder it stands in, as a path from the project root."""
        return self.path.rpartition("/")[0]
