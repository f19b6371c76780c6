"""The feed of what is new and changed. Source: RFC 4287, The Atom Syndication Format."""

from __future__ import annotations

from collections.abc import Iterator

from ...model.site_settings import FRONT
from ...render.site import Site
from ..page_kinds.kind import F, FeedEntry, NotListed, PageKind
from ..page_kinds.table import PAGE_KINDS
from ..page_kinds.words import listed
from .latest import midnight
from .stable_ids import StableIds
from .xml_out import Element, as_text, child

ADDRESS = "feed.xml"
NEWEST = 100
"""Entries in the feed; older ones leave it."""
_ATOM = "http://www.w3.org/2005/Atom"


def entries(site: Site) -> list[tuple[str, FeedEntry]]:
    """What the feed tells of, newest first, then by address: each with the source of its page."""
    found = sorted(
        (entry for kind in PAGE_KINDS.values() for entry in _of_kind(kind, site)), key=lambda entry: entry[0]
    )
    return sorted(found, key=lambda entry: entry[1].updated, reverse=True)[:NEWEST]


def _of_kind(kind: PageKind[F], site: Site) -> Iterator[tuple[str, FeedEntry]]:
    if isinstance(kind.feed, NotListed):
        return
    for page in site.collection.of_kind(kind.schema):
        entry = kind.feed(site, page)
        if not isinstance(entry, NotListed):
            yield page.source, entry


def feed(site: Site) -> str:
    """The feed. The site's address must be known, and there must be at least one of ``entries``."""
    imprint, settings, told = site.collection.reference.imprint, site.settings, entries(site)
    ids, words = StableIds(imprint.identity), told_of()
    root = Element("feed", {"xmlns": _ATOM, "xml:lang": settings.language})
    child(root, "id", ids.of("feed").urn)
    child(root, "title", f"{settings.name}: new and changed")
    child(root, "subtitle", f"{words[:1].upper()}{words[1:]}, new and changed.")
    child(root, "updated", midnight(max(entry.updated for _, entry in told)))
    child(child(root, "author"), "name", imprint.publisher)
    child(root, "link", rel="self", type="application/atom+xml", href=settings.full_address(ADDRESS))
    child(root, "link", rel="alternate", type="text/html", href=settings.full_address(FRONT))
    child(root, "rights", imprint.licence.terms.line)
    for source, entry in told:
        _write(child(root, "entry"), source, entry, site, ids)
    return as_text(root)


def told_of() -> str:
    """The kinds of page the feed tells of, in words."""
    return listed([kind.names.many for kind in PAGE_KINDS.values() if not isinstance(kind.feed, NotListed)])


def _write(into: Element, source: str, entry: FeedEntry, site: Site, ids: StableIds) -> None:
    child(into, "id", ids.of("page", source).urn)
    child(into, "title", entry.title)
    child(into, "updated", midnight(entry.updated))
    if entry.published:
        child(into, "published", midnight(entry.published))
    child(into, "link", rel="alternate", type="text/html", href=site.settings.full_address(source))
    for term in entry.categories:
        child(into, "category", term=term)
    child(into, "summary", entry.summary)
