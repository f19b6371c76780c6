"""The table of the kinds of page."""

from __future__ import annotations

from typing import Any

from ...model.document import Document
from ...model.page_fields import PageFields
from .book import BOOK
from .home import HOME
from .kind import PageKind
from .page import PAGE
from .series import SERIES
from .session import SESSION
from .story import STORY

# Each row speaks of pages of its own schema, and there is no type for "of some schema or other".
Row = PageKind[Any]
PAGE_KINDS: tuple[Row, ...] = (BOOK, STORY, SESSION, HOME, SERIES, PAGE)


def kind_of(page: Document[PageFields]) -> Row:
    """The row of a page."""
    return next(kind for kind in PAGE_KINDS if isinstance(page.fields, kind.schema))
