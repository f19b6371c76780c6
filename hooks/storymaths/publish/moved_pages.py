"""What stands at the addresses of pages that have moved: a page that leads on, and the same as a list for a web server."""

from __future__ import annotations

from collections.abc import Mapping

from ..model.address import html_of
from ..model.moved import Moved
from ..render.policy import policy
from ..render.site import Site

MAP = "moved.map"
_ABOUT = "# Old address, new address: one a line, as nginx reads a map. Retired pages are not in it; they say why.\n"


def moved_pages(site: Site) -> Mapping[str, str]:
    """Each old address, from the site's root, with its page; and ``moved.map``."""
    titles = {page.source: page.fields.title for page in site.collection.documents}
    moved = [page for page in site.collection.reference.moved.values() if page.was not in titles]
    pages = {html_of(page.was): _draw(site, page, titles.get(page.leads_to, "Go to the page")) for page in moved}
    return {**pages, MAP: _ABOUT + "".join(_line(page) for page in moved if page.to)}


def _draw(site: Site, moved: Moved, title: str) -> str:
    return site.draw(
        "moved.html", moved.was, moved=moved, title=title, address=html_of(moved.was), policy=policy("page")
    )


def _line(moved: Moved) -> str:
    return f"/{html_of(moved.was)} /{html_of(moved.leads_to)};\n"
