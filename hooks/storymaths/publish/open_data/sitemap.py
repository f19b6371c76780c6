"""The list of pages for search engines. Source: the Sitemaps protocol, schema 0.9 (sitemaps.org).

The days are those the pages themselves give. Pages the build makes give none: what they show is older or newer by
parts, and a day taken from the clock would be a new one at each build.
"""

from __future__ import annotations

from ...render.site import Site
from .xml_out import Element, as_text, child

ADDRESS = "sitemap.xml"
MOST = 50_000
"""Pages one sitemap may list, by the protocol."""
_SCHEMA = "http://www.sitemaps.org/schemas/sitemap/0.9"


def sitemap(site: Site) -> str:
    """The sitemap. The site's address must be known."""
    days = {page.source: page.fields.updated for page in site.collection.documents}
    sources = sorted({*days, *(page.source for page in site.generated)})
    root = Element("urlset", {"xmlns": _SCHEMA})
    for source in sources[:MOST]:
        entry = child(root, "url")
        child(entry, "loc", site.settings.full_address(source))
        day = days.get(source)
        if day:
            child(entry, "lastmod", day.isoformat())
    return as_text(root)
