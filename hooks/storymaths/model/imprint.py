"""The imprint: who publishes the collection, under which licence, and the name its ids are made from."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Literal

from pydantic import Field, StringConstraints, model_validator

from .fields import Strict, Text

IRI = r"^https?://[^\s<>\"{}|\\^`]+$"
"""The form of the next, which messages put into words."""
Iri = Annotated[str, StringConstraints(pattern=IRI, strict=True)]
Identity = Annotated[str, StringConstraints(pattern=r"^(https?://|urn:uuid:)[^\s<>\"{}|\\^`]+$", strict=True)]

_RESERVED = "All rights reserved"
_ASK = "Please ask before you copy or share anything from here."
_EACH_BOOK = "Each book’s own licence"
_SEE_BOOK = "The page of each book says what may be done with it and with its lessons."


@dataclass(frozen=True, slots=True)
class Terms:
    """What may be done with a page."""

    name: str
    says: str
    """In a sentence or two; empty where the licence itself says it all."""
    url: str
    """Where the licence is published; empty where it is not."""
    free: bool
    """Whether it costs nothing."""

    @property
    def line(self) -> str:
        """In a line of plain text."""
        return f"{self.name}, {self.url}" if self.url else self.name


class Licence(Strict):
    """What may be done with some pages: a published licence, one that is paid for, or nothing without asking."""

    kind: Literal["open", "paid", "reserved"]
    """open where a published licence lets people share, paid where it is bought, reserved where people have to ask."""
    name: Text | None = None
    """The name of the licence. An open and a paid one need it."""
    url: Iri | None = None
    """The web address where an open licence can be read."""
    says: Text | None = None
    """What people may do, in a sentence. A paid licence says who may use it and how one gets it."""

    @model_validator(mode="after")
    def _whole(self) -> Licence:
        if self.kind == "open" and not (self.name and self.url):
            raise ValueError("an open licence has a name, and a url where it can be read")
        if self.kind == "paid" and not (self.name and self.says):
            raise ValueError("a licence that is paid for has a name, and says who may use it and how one gets it")
        return self

    @property
    def terms(self) -> Terms:
        """What it lets people do."""
        says = self.says or ("" if self.kind == "open" else _ASK)
        return Terms(self.name or _RESERVED, says, self.url or "", self.kind != "paid")


class EachBook(Strict):
    """Each book has a licence of its own."""

    kind: Literal["each-book"]

    @property
    def terms(self) -> Terms:
        """For pages of no book."""
        return Terms(_EACH_BOOK, _SEE_BOOK, "", True)


class Imprint(Strict):
    """Who speaks, and what others may do with what is said."""

    publisher: Text
    contact: Text | None = None
    """Where readers write to: a mailbox, or words."""
    licence: Annotated[Licence | EachBook, Field(discriminator="kind")]
    """Of the lessons, and of the stories and drawings of books that are the collection's own."""
    identity: Identity
    """Never changes, even when the site moves: readers of the feed and of the curricula know things by ids made from it."""
