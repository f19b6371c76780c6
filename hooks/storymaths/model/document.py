"""One file of content: what it says, where each value stands, and what could not be read in it."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any, Generic, Literal, Protocol, TypeVar

from .book import Book, Story
from .home import Home
from .problem import Place
from .series import Page, Series
from .session import Session

Fields = Book | Story | Session | Home | Series | Page
F_co = TypeVar("F_co", bound=Fields, covariant=True)
Loc = tuple[str | int, ...]
"""The way to a value in front matter: keys and list positions, as in ``("reads", 0, "pages")``."""

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


@dataclass(frozen=True, slots=True)
class Passage:
    """A stretch of prose: where it stands, and the year it is written for if not the page's own."""

    start: int
    loc: Loc
    year: int | None


@dataclass(frozen=True)
class Prose:
    """All the words of a page in one string, so that a rule reads it once."""

    text: str
    passages: Sequence[Passage]

    @cached_property
    def _starts(self) -> list[int]:
        return [passage.start for passage in self.passages]

    def passage_at(self, offset: int) -> Passage:
        """The passage that holds a position in ``text``."""
        return self.passages[bisect_right(self._starts, offset) - 1]


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
