"""Ids that stay the same for ever: made from the collection's identity and what a thing is, never from where it stands."""

from __future__ import annotations

from uuid import NAMESPACE_URL, UUID, uuid5


class StableIds:
    """Ids of things in one collection; another collection has others, for things of the same name.

    Source: RFC 9562, section 5.5 (UUIDv5, from a name within a namespace).
    """

    def __init__(self, identity: str) -> None:
        self._collection = uuid5(NAMESPACE_URL, identity)

    def of(self, *name: str) -> UUID:
        """The id of a thing by its sort and names, as in ``of("objective", "england-content-domain", "2C4")``."""
        return uuid5(self._collection, "\n".join(name))
