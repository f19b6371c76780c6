"""Parts that the catalogue's records of several kinds of page share."""

from __future__ import annotations

from ...model.dates import Dated
from ...parse.body import words_of
from ...render.site import Site
from .kind import Record

CATALOGUE = "open-data/catalogue.json"
"""Where the catalogue is, from the site's root."""


def url_in_catalogue(site: Site, source: str) -> str:
    """An address as the catalogue gives it: full where the site's own is known, else from the file."""
    return site.address(source, CATALOGUE)


def dates_in_catalogue(fields: Dated) -> Record:
    """When a page was published and what has changed since; nothing where it does not say."""
    if fields.published is None:
        return {}
    changes = [{"date": change.date.isoformat(), "what": words_of(change.what)} for change in fields.changed]
    return {"published": fields.published.isoformat()} | ({"changed": changes} if changes else {})
