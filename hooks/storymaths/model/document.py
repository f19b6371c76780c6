"""One file of content: what it says, where each value stands, and what could not be read in it."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import cached_property
from typing import Any, Generic, Literal, Protocol, TypeVar

from .address import source_of
from .body import Body
from .locator import Locator as Locator  # noqa: PLC0414 - part of what this module offers
from .locator import find_words
from .names import PRINTS_NOTHING, Prints
from .page_fields import ListName, Named, PageFields
from .problem import Place
from .prose import BODY, PlacedText, Prose
from .prose import Loc as Loc  # noqa: PLC0414 - part of what this module offers

F_co = TypeVar("F_co", bound=PageFields, covariant=True)
FaultKind = Literal["broken", "kind", "unknown", "missing", "mistyped", "duplicate", "file", "letter", "drawing", "cut"]


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
    fix: str = ""
    """What mends it, where whoever met it knows better than the rule."""


class Reader(Protocol):
    """Reads a page's words when they are first asked for; made by the parser."""

    @property
    def front(self) -> Sequence[str]:
        """The pupils' texts of the front matter as they are written."""

    def read_content(self, body: str, line: int) -> Body:
        """The body, which starts on a line of its file."""

    def gather_prose(self, content: Body) -> Prose:
        """The words of front matter and body."""

    def gather_notes(self) -> Prose:
        """What the front matter says to adults alone."""


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
    reader: Reader = field(repr=False)
    locator: Locator = field(repr=False)
    faults: tuple[Fault, ...] = ()
    front_marked: bool = True
    """False where it is known that no text of the front matter is marked up: most are not, and are not gone through."""
    written: str = field(default="", repr=False)
    """The text of its file, where that names something that is printed in its place."""
    prints: Prints = field(default=PRINTS_NOTHING, repr=False)
    """What its names print."""

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

    @cached_property
    def content(self) -> Body:
        """The body as it is read: blocks and runs of text."""
        return self.reader.read_content(self.body, self.body_line)

    @cached_property
    def prose(self) -> Prose:
        """The words of the lesson in one string."""
        return self.reader.gather_prose(self.content)

    @cached_property
    def notes(self) -> Prose:
        """What the front matter says to adults alone: notes to materials and things, changes, rights."""
        return self.reader.gather_notes()

    @property
    def placed_texts(self) -> Iterator[PlacedText]:
        """All that it says, with the places of it."""
        yield PlacedText(self.prose.text, self.place_in_prose)
        yield PlacedText(self.notes.text, self.place_in_notes)

    @cached_property
    def texts(self) -> Sequence[tuple[Loc, str]]:
        """Every text of the front matter and where it stands."""
        return tuple(texts_in(self.raw))

    @cached_property
    def marked_up(self) -> tuple[tuple[Loc, str], ...]:
        """Every text of the front matter that holds a mark of HTML, of attributes or of an address."""
        return tuple((loc, text) for loc, text in self.texts if marked_up(text)) if self.front_marked else ()

    def place(self, *loc: str | int, within: str = "") -> Place:
        """Where a value stands in the file."""
        return self.locator.place(loc, within)

    def place_in_notes(self, offset: int, words: str) -> Place:
        """Where ``words``, found at ``offset`` of the notes, stand in the file."""
        return self.locator.place(self.notes.passage_at(offset).loc, words, self.notes.before_on_line(offset))

    def place_in_prose(self, offset: int, words: str) -> Place:
        """Where ``words``, found at ``offset`` of the prose, stand in the file."""
        passage, before = self.prose.passage_at(offset), self.prose.before_on_line(offset)
        if passage.loc != BODY:
            return self.locator.place(passage.loc, words, before)
        return self.place_on_line(passage.line, words, before)

    def place_on_line(self, line: int, words: str = "", before: str = "") -> Place:
        """Where some words stand on a line of the body, after the words ``before``; where marks part them, the first."""
        text = self.body.split("\n")[line - self.body_line] if self.body else ""
        return self.as_written(Place(self.path, line, 1 + max(0, find_words(text, words, before))))

    def as_written(self, place: Place) -> Place:
        """Where something stands in its file that stands at a place of a line with its names printed."""
        if not self.written:
            return place
        line = self.written.split("\n")[place.line - 1]
        return replace(place, column=self.prints.position(line, place.column - 1) + 1)


def marked_up(text: str) -> bool:
    """Whether a text may hold HTML, an address or an attribute."""
    # Each begins with a plain sign, which is some ten times as fast to look for as a pattern of all at once.
    return "](" in text or "]:" in text or bool(_TAG.search(text) or _ATTRIBUTE.search(text))


def texts_in(value: Any, loc: Loc = ()) -> Iterator[tuple[Loc, str]]:
    """Every text of a value as YAML has it, and where it stands."""
    if isinstance(value, str):
        yield loc, value
    elif isinstance(value, dict):
        for key, inner in value.items():
            yield from texts_in(inner, (*loc, key))
    elif isinstance(value, list):
        for index, inner in enumerate(value):
            yield from texts_in(inner, (*loc, index))


@dataclass(frozen=True)
class Unread(ContentFile):
    """A file whose front matter has faults that leave nothing to check further."""

    raw: Mapping[str, Any]
    faults: tuple[Fault, ...]
    written: str = field(default="", repr=False)
    """The text of its file, where that names something."""
