"""The imprint: who publishes the collection, under which licence, and the name its ids are made from."""

from __future__ import annotations

from typing import Annotated

from pydantic import StringConstraints

from .fields import Strict, Text

IRI = r"^https?://[^\s<>\"{}|\\^`]+$"
"""The form of the next, which messages put into words."""
Iri = Annotated[str, StringConstraints(pattern=IRI, strict=True)]


class Licence(Strict):
    """A published licence by its name and address."""

    name: Text
    url: Iri


class Imprint(Strict):
    """What open data says of the collection as a whole."""

    made_by: Text
    licence: Licence
    """Of the lessons, and of the stories and drawings of books that are the collection's own."""
    identity: Iri
    """Never changes, even when the site moves: readers of the feed and of the curricula know things by ids made from it."""
