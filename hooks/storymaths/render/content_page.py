"""Any written page of the collection into HTML, by its kind."""

from __future__ import annotations

from typing import cast

from ..model.address import book_id
from ..model.book import Book
from ..model.document import Document
from ..model.home import Home
from ..model.page import Page
from ..model.page_fields import PageFields
from ..model.series import Series
from ..model.session import Session
from ..model.story import Story
from .book_pages import draw_book, draw_story
from .series_page import draw_series
from .session_page import draw_session
from .site import Rendered, Site
from .written_pages import draw_home, draw_plain


def draw_content(site: Site, page: Document[PageFields]) -> Rendered:
    """The page of a document."""
    fields = page.fields
    if isinstance(fields, Session):
        return draw_session(site, cast("Document[Session]", page))
    if isinstance(fields, Home):
        return draw_home(site, cast("Document[Home]", page))
    if isinstance(fields, Book):
        return draw_book(site, cast("Document[Book]", page), book_id(page.path))
    if isinstance(fields, Story):
        return draw_story(site, cast("Document[Story]", page))
    if isinstance(fields, Series):
        return draw_series(site, cast("Document[Series]", page))
    return draw_plain(site, cast("Document[Page]", page))
