"""What stands in a page's head for programs to read: what the page is, and where the feed is."""

from __future__ import annotations

from ..model.address import link
from ..model.document import Document, Fields
from ..render.site import Rendered, Site
from .linked_data.of_page import PageDescriber
from .open_data import feed


class HeadMetadata:
    """The heads of one site's pages, each as it is asked for. The site must be without problems."""

    def __init__(self, site: Site) -> None:
        self._describer = PageDescriber(site)
        self._feed = bool(site.settings.url and feed.lessons(site))

    def element(self, written: Document[Fields] | None, page: Rendered) -> str:
        """The elements for a page, as HTML."""
        described = self._describer.element(written, page)
        if not self._feed:
            return described
        address = link(feed.ADDRESS, page.source)
        return f'<link rel="alternate" type="application/atom+xml" title="New and changed" href="{address}">{described}'
