"""The feed of new and changed sessions and home activities. Source: RFC 4287, The Atom Syndication Format."""

from __future__ import annotations

from ...model.document import Document
from ...model.fields import year_name
from ...model.home import Home
from ...model.session import Session
from ...model.site_settings import FRONT
from ...render.inline import plain
from ...render.site import Site
from .latest import midnight
from .stable_ids import StableIds
from .xml_out import Element, as_text, child

ADDRESS = "feed.xml"
NEWEST = 100
"""Entries in the feed; older ones leave it."""
_ATOM = "http://www.w3.org/2005/Atom"
Lesson = Document[Session] | Document[Home]


def lessons(site: Site) -> list[Lesson]:
    """What the feed tells of: the dated sessions and home activities, newest first, then by address."""
    pages: list[Lesson] = [*site.collection.of_kind(Session), *site.collection.of_kind(Home)]
    dated = sorted((page for page in pages if page.fields.updated), key=lambda page: page.path)
    return sorted(dated, key=lambda page: str(page.fields.updated), reverse=True)[:NEWEST]


def feed(site: Site) -> str:
    """The feed. The site's address must be known, and there must be at least one of ``lessons``."""
    imprint, settings, told = site.collection.reference.imprint, site.settings, lessons(site)
    ids = StableIds(imprint.identity)
    root = Element("feed", {"xmlns": _ATOM, "xml:lang": "en-GB"})
    child(root, "id", ids.of("feed").urn)
    child(root, "title", f"{settings.name or imprint.made_by}: new and changed")
    child(root, "subtitle", "Sessions and home activities, new and changed.")
    child(root, "updated", midnight(max(day for page in told if (day := page.fields.updated))))
    child(child(root, "author"), "name", imprint.made_by)
    child(root, "link", rel="self", type="application/atom+xml", href=settings.full_address(ADDRESS))
    child(root, "link", rel="alternate", type="text/html", href=settings.full_address(FRONT))
    child(root, "rights", f"{imprint.licence.name}, {imprint.licence.url}")
    for page in told:
        _entry(child(root, "entry"), page, site, ids)
    return as_text(root)


def _entry(entry: Element, page: Lesson, site: Site, ids: StableIds) -> None:
    fields, source = page.fields, page.source
    book = site.collection.books[fields.book].fields.title
    child(entry, "id", ids.of("page", source).urn)
    child(entry, "title", f"{plain(fields.title)} ({plain(book)})")
    if fields.updated:
        child(entry, "updated", midnight(fields.updated))
    if fields.published:
        child(entry, "published", midnight(fields.published))
    child(entry, "link", rel="alternate", type="text/html", href=site.settings.full_address(source))
    child(entry, "category", term=year_name(fields.year))
    for idea in fields.concepts:
        child(entry, "category", term=site.collection.reference.concepts[idea].name)
    child(entry, "summary", _summary(fields))


def _summary(fields: Session | Home) -> str:
    """What changed, where something did; else what the page is."""
    if fields.changed:
        return f"Changed: {' '.join(fields.changed[-1].what.split())} {plain(fields.summary)}"
    return plain(fields.summary)
