"""Which sessions teach which objective and concept: taught, revisited, or touched in a bend."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping
from dataclasses import dataclass, field

from .collection import Collection
from .document import Document
from .session import Session

Key = tuple[str, str]
"""A framework's id and a code."""


@dataclass
class Coverage:
    """Sessions by objective, in three ways, and the sessions and home activities of each concept."""

    taught: Mapping[Key, list[Document[Session]]] = field(default_factory=dict)
    revisited: Mapping[Key, list[Document[Session]]] = field(default_factory=dict)
    bent: Mapping[Key, list[Document[Session]]] = field(default_factory=dict)


def coverage_of(collection: Collection) -> Coverage:
    """The coverage of a whole collection, sessions in path order."""
    taught, revisited, bent = (defaultdict[Key, list[Document[Session]]](list) for _ in range(3))
    for page in collection.of_kind(Session):
        for framework, codes in page.fields.objectives.items():
            for code in codes:
                taught[framework, code].append(page)
        for framework, codes in page.fields.revisits.items():
            for code in codes:
                revisited[framework, code].append(page)
        for bend in page.fields.bends.values():
            for framework, codes in bend.objectives.items():
                for code in codes:
                    bent[framework, code].append(page)
    return Coverage(dict(taught), dict(revisited), dict(bent))
