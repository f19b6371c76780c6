"""One file of content: what it says, where each value stands, and what could not be read in it."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any, Generic, Literal, TypeVar

from .address import source_of
from .locator import Locator as Locator  # noqa: PLC0414 - part of what this module offers
from .page_fields import ListName, Named, PageFields
from .problem import Place
from .prose import BODY, Prose
from .prose import Loc as Loc  # noqa: PLC0414 - part of what this module offers

F_co = TypeVar("F_co", bound=PageFields, covariant=True)
FaultKind = Literal["broken", "kind", "unknown", "missing", "mistyped", "duplicate", "file", "letter", "drawing"]


_TAG = re.compile(r"<[A-Za-z/!?]")
_ATTRIBUTE = re.compile(r"=(?<=[A-Za-z]=)")


@dataclass(frozen=True, slots=True)
class Fault:
    """Something in a file that could not be taken as meant. Rules put it into words."""

    kind: FaultKind
    place: Place
    field: str
    detail: str = ""
    known: tuple[str, ...] = ()
    """Keys or values that would have been understood there."""


@dataclass(frozen=True)
class ContentFile:
    """A page's file, read or not."""

    path: str
    """From the project root."""

    @property
    def folder(self) -> str:
        """The folder it stands in, as a path from the project root."""
        return self.path.rpartition("/")[0]

    @property
    def source(self) -> str:
        """Its name inside ``content/``."""
        return source_of(self.path)

    def beside(self, name: str) -> str:
        """The source of a file that this page names as the folder of the page sees it."""
        folder, slash, _ = self.source.rpartition("/")
        return folder + slash + name


@dataclass(frozen=True)
class Document(ContentFile, Generic[F_co]):
    """A file of content that was understood."""

    fields: F_co
    raw: Mapping[str, Any]
    body: str
    body_line: int
    prose: Prose
    locator: Locator = field(repr=False)
    faults: tuple[Fault, ...] = ()
    front_marked: bool = True
    """False where it is known that no text of the front matter is marked up: most are not, and are not gone through."""

    @property
    def book(self) -> str | None:
        """The id of the book it belongs to; None for a page of no book."""
        return self.fields.book_at(self.path)

    @cached_property
    def _named(self) -> Mapping[ListName, list[Named]]:
        found: dict[ListName, list[Named]] = defaultdict(list)
        for named in self.fields.named():
            found[named.of].append(named)
        return found

    def named(self, of: ListName) -> Sequence[Named]:
        """The ids it names of a list in ``site_data/``, as they stand."""
        return self._named.get(of, ())

    @property
    def concepts(self) -> tuple[str, ...]:
        """The concepts it names, each once."""
        return tuple(dict.fromkeys(named.id for named in self.named("concepts")))

    def texts(self) -> Iterator[tuple[Loc, str]]:
        """Every text of the front matter and where it stands."""
        return _texts(self.raw, ())

    @cached_property
    def marked_up(self) -> tuple[tuple[Loc, str], ...]:
        """Every text that holds a mark of HTML, of attributes or of an address; the body last."""
        front = self.texts() if self.front_marked else ()
        found = [(loc, text) for loc, text in front if marked_up(text)]
        return (*found, (BODY, self.body)) if marked_up(self.body) else tuple(found)

    def place(self, *loc: str | int, within: str = "") -> Place:
        """Where a value stands in the file."""
        return self.locator.place(loc, within)

    def place_in_prose(self, offset: int, words: str) -> Place:
        """Where ``words``, found at ``offset`` of the prose, stand in the file."""
        passage = self.prose.passage_at(offset)
        nth = self.prose.text.count(words, passage.start, offset)
        return self.locator.place(passage.loc, words, nth)


def marked_up(text: str) -> bool:
    """Whether a text may hold HTML, an address or an attribute."""
    # Each begins with a plain sign, which is some ten times as fast to look for as a pattern of all at once.
    return "](" in text or "]:" in text or bool(_TAG.search(text) or _ATTRIBUTE.search(text))


def _texts(value: Any, loc: Loc) -> Iterator[tuple[Loc, str]]:
    if isinstance(value, str):
        yield loc, value
    elif isinstance(value, dict):
        for key, inner in value.items():
            yield from _texts(inner, (*loc, key))
    elif isinstance(value, list):
        for index, inner in enumerate(value):
            yield from _texts(inner, (*loc, index))


@dataclass(frozen=True)
class Unread(ContentFile):
    """A file whose front matter has faults that leave nothing to check further."""

    raw: Mapping[str, Any]
    faults: tuple[Fault, ...]
