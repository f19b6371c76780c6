"""The faults the parser met, of one sort, over the whole collection."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.document import Document, Fault, FaultKind, Unread
from ..model.page_fields import PageFields


def faults(collection: Collection, kind: FaultKind) -> Iterator[Fault]:
    """Every fault of a kind, in pages that could be used, pages that could not, and files beside them."""
    pages: tuple[Document[PageFields] | Unread, ...] = (*collection.documents, *collection.unread)
    for page in pages:
        for fault in page.faults:
            if fault.kind == kind:
                yield fault
    yield from (fault for fault in collection.faults if fault.kind == kind)
