"""The part of a collection that a series needs, as the kinds of its pages say."""

from __future__ import annotations

from dataclasses import replace

from ...model.collection import Collection
from ...model.document import Document
from ...model.page_fields import PageFields
from ...model.series import Series
from ..page_kinds.kind import Packed
from ..page_kinds.table import kind_of


def only_series(collection: Collection, series: str) -> Collection:
    """A series' page, its books with all that is theirs, and what every pack holds."""
    page = collection.series.get(series)
    return replace(collection, documents=tuple(one for one in collection.documents if _belongs(one, page)))


def _belongs(page: Document[PageFields], series: Document[Series] | None) -> bool:
    match kind_of(page).pack:
        case Packed.ALWAYS:
            return True
        case Packed.WITH_ITS_BOOK:
            return series is not None and page.book in series.fields.books
        case Packed.AS_THE_SERIES:
            return page is series
