"""The website around the collection: its settings, and the full address of any page of it."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from urllib.parse import quote

from .address import html_of

FRONT = "index.md"


@dataclass(frozen=True, slots=True)
class SiteSettings:
    """What ``site_data/site.yaml`` says of the site; without an address only links within it can be given."""

    name: str = ""
    says: str = ""
    url: str = ""
    """With a closing slash; empty when it is not known where the site will stand."""
    print_sheets: bool = False
    """Whether there are PDFs to print."""

    def full_address(self, source: str) -> str:
        """The address of the page made of ``source``, or of a file; the front page is the site's own address.

        Only to be asked when ``url`` is known.
        """
        path, mark, anchor = source.partition("#")
        return self.url + ("" if path == FRONT else _quote_address(path)) + mark + anchor


@lru_cache(maxsize=4096)
def _quote_address(path: str) -> str:
    """The path of a source as an address writes it; the same few are asked for by nearly every page."""
    return quote(html_of(path))
