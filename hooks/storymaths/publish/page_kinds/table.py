"""The table of the kinds of page."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from ...model.document import Document
from ...model.page_fields import PageFields
from ...model.page_schemas import SCHEMAS
from .any_book import ANY_BOOK
from .book import BOOK
from .home import HOME
from .kind import PageKind
from .page import PAGE
from .series import SERIES
from .session import SESSION
from .story import STORY

# Each row speaks of pages of its own schema, and there is no type for "of some schema or other".
Row = PageKind[Any]
PAGE_KINDS: Mapping[str, Row] = {kind.name: kind for kind in (BOOK, STORY, SESSION, HOME, ANY_BOOK, SERIES, PAGE)}
"""By what authors write as ``kind:``."""
assert PAGE_KINDS.keys() == SCHEMAS.keys(), f"no row, or no schema: {PAGE_KINDS.keys() ^ SCHEMAS.keys()}"


def kind_of(page: Document[PageFields]) -> Row:
    """The row of a page."""
    return PAGE_KINDS[page.fields.kind]
