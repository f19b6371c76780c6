"""The imprint: who publishes the collection, under which licence, and the name its ids are made from."""

from __future__ import annotations

from typing import Annotated

from pydantic import StringConstraints

from .fields import Strict, Text

Iri = Annotated[str, StringConstraints(pattern=r"^https?://[^\s<>\"{}|\\^`]+$", strict=True)]


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
