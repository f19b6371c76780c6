"""Any written page of the collection into HTML, by its kind."""

from __future__ import annotations

from ..model.collection import is_of_kind
from ..model.document import Document
from ..model.page import Page
from ..model.page_fields import PageFields
from ..model.site_settings import FRONT
from ..render.site import Rendered, Site
from ..render.written_pages import draw_front
from .page_kinds.table import kind_of
from .sections import on_front


def draw_content(site: Site, page: Document[PageFields]) -> Rendered:
    """The page of a document; the first page of the site has a frame of its own."""
    if page.source == FRONT and is_of_kind(page, Page):
        return draw_front(site, page, list(on_front(site, FRONT)))
    return kind_of(page).draw(site, page)
