"""What a kind of page has to say: ``PageKind``, a row of the table, and its parts.

No part has a value of its own: a kind that leaves one out does not pass the type checker, and one that has nothing to
say somewhere says ``NOT_LISTED``.
"""

from __future__ import annotations

import datetime
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from enum import Enum
from pathlib import Path
from typing import Any, Final, Generic, Literal, TypeVar

from markupsafe import Markup

from ...model.document import Document
from ...model.page_fields import PageFields
from ...model.session import Per
from ...render.site import Rendered, Site
from ..linked_data.node import At, Node

F = TypeVar("F", bound=PageFields)
About = TypeVar("About")
Record = dict[str, Any]


class NotListed(Enum):
    """The type of ``NOT_LISTED``."""

    NOT_LISTED = "not listed"


NOT_LISTED: Final = NotListed.NOT_LISTED
"""Said in place of a part: pages of this kind are no business of that list or file."""


class Packed(Enum):
    """When the pages of a kind are in the pack of a series."""

    ALWAYS = "always"
    WITH_ITS_BOOK = "when its book is one of the series"
    AS_THE_SERIES = "when it is the series itself"


@dataclass(frozen=True, slots=True)
class Names:
    """What people call such a page: ``home activity``, and several ``home activities``."""

    one: str
    many: str


@dataclass(frozen=True, slots=True)
class Need:
    """Something to get ready: its id, how many, for whom."""

    item: str
    count: int
    per: Per


@dataclass(frozen=True, kw_only=True)
class InPlan(Generic[F]):
    """What a teacher's own plan adds up."""

    minutes: Callable[[F], int]
    group_size: Callable[[F], int]
    """Children in a group; 0 where there is but one child."""
    needs: Callable[[F], Sequence[Need]]


Card = Literal["book-card", "step-card", "home-card", "text-card"]
"""How the finder draws an idea: with a cover, with its number, with a roof, with words alone."""


@dataclass(frozen=True, kw_only=True)
class InFinder(Generic[F]):
    """What the finder says of such a page. Its year and concepts are those of the page."""

    letter: str
    """One letter that stands for the kind in the data; no two kinds have the same."""
    verb: str
    """What such a page does with its concepts: it ``teaches`` them."""
    card: Card
    of_book: str
    """How its card leads over to the title of its book: ``from``; empty where it does not."""
    themes: Callable[[F], Sequence[str]]
    searched: Callable[[F], Sequence[str]]
    """Texts that are searched beside its title and its summary."""


@dataclass(frozen=True, slots=True)
class FeedEntry:
    """An entry of the feed."""

    title: str
    summary: str
    published: datetime.date | None
    updated: datetime.date
    categories: Sequence[str]


@dataclass(frozen=True, slots=True)
class PrintedRow:
    """A row of the catalogue that is printed."""

    title: str
    year: int
    minutes: int | None
    teaches: Markup
    """Codes or concepts."""


@dataclass(frozen=True, kw_only=True)
class InCatalogue(Generic[F]):
    """What the public catalogue holds of such a page: in the list of its book, or in one of its own without a book."""

    list: str
    """The name of the list in ``catalogue.json``."""
    says: str
    """What the list is, for the schema."""
    definition: Path
    """The JSON schema of an entry."""
    record: Callable[[Site, Document[F]], Record]
    """An entry."""
    printed: Callable[[Site, str, Document[F]], PrintedRow] | NotListed
    """Its row under its book on the page to print, whose source is given."""
    counted: str
    """How the page to print goes on after a number of them: ``to do at home``."""


@dataclass(frozen=True, kw_only=True)
class Section(Generic[F, About]):
    """A section with pages of the kind on a page about something, such as a concept."""

    anchor: str
    heading: str
    entries: Callable[[Site, str, About, Sequence[Document[F]]], Markup]
    """Its HTML under the heading, from the source of the page it is on and what that is about; empty for no section."""


@dataclass(frozen=True, kw_only=True)
class OnIdeaPages(Generic[F]):
    """How pages about ideas lead to pages of the kind: a concept's, a theme's and a year's."""

    teaches: bool
    """Whether it is something to do, and is counted; where it only shows an idea it stands at the side."""
    concept: Section[F, str]
    theme: Section[F, str] | NotListed
    year: Section[F, int] | NotListed


@dataclass(frozen=True, kw_only=True)
class InLinkedData(Generic[F]):
    """What such a page is in schema.org's words."""

    type: str
    """Its type, where a list says what is in it."""
    lists: Sequence[str]
    """The pages, by their names in ``LISTS``, that are lists of such pages."""
    describe: Callable[[Document[F], Site, At], Node]


@dataclass(frozen=True, kw_only=True)
class Starter:
    """What ``storymaths new`` writes. ``$title``, ``$slug``, ``$book``, ``$number``, ``$needs`` and ``$date`` are filled in."""

    text: Path
    """The page with every field, filled or with a comment that says what to fill."""
    path: str
    """Where it goes, inside ``content/``. With ``$number`` it is the next of its book."""
    for_book: bool
    """Whether the author names a book that is there."""


@dataclass(frozen=True, kw_only=True)
class PageKind(Generic[F]):
    """A kind of page: the row of the table."""

    schema: type[F]
    names: Names
    draw: Callable[[Site, Document[F]], Rendered]
    finder: InFinder[F] | NotListed
    plan: InPlan[F] | NotListed
    """Asked only of what the finder leads to."""
    feed: Callable[[Site, Document[F]], FeedEntry | NotListed] | NotListed
    """Its entry; a page that does not say when it changed has none."""
    catalogue: InCatalogue[F] | NotListed
    idea_pages: OnIdeaPages[F] | NotListed
    front: Section[F, None] | NotListed
    """Its section on the front page."""
    linked_data: InLinkedData[F]
    pack: Packed
    example: Path
    """A finished page of the kind, for the authors' guide and beside the fields of the starter; all rules hold for it."""
    starter: Starter | NotListed

    @property
    def name(self) -> str:
        """What authors write as ``kind:``."""
        return self.schema.kind_name()
