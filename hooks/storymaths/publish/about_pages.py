"""Pages about the site itself: its first page, who made it and what may be done with it, and who can use it."""

from __future__ import annotations

from ..model.address import LISTS
from ..model.site_settings import PROMISES
from ..render.inline import inline
from ..render.site import Rendered, Site
from .sections import on_front
from .stands_on import NOTICES, needed_directly


def draw_front(site: Site) -> Rendered:
    """The first page: doors, the finder, a section for each kind of page that has one, and its publisher's words."""
    source, front = LISTS["front"], site.settings.front
    html = site.draw(
        "front.html",
        source,
        front=front,
        sections=list(on_front(site, source)),
        promises=" ".join(PROMISES[one] for one in front.promises),
    )
    return Rendered(source, inline(front.title).striptags(), front.summary, html, "page")


def draw_credits(site: Site) -> Rendered:
    """Who publishes the collection, under which licence, and what it is made with."""
    reference, settings = site.collection.reference, site.settings
    sources = [source.publisher for framework in reference.frameworks.values() for source in framework.sources]
    html = site.draw(
        "credits.html",
        LISTS["credits"],
        imprint=reference.imprint,
        terms=site.terms(LISTS["credits"]),
        own=[(page, site.terms(page.source)) for page in site.collection.books.values() if page.fields.licence],
        published_by=list(dict.fromkeys(sources)),
        notices=NOTICES,
        built_with=needed_directly(),
        faces={settings.letterforms.text, settings.letterforms.child},
    )
    summary = "Who made this, with what, and what you may do with it."
    return Rendered(LISTS["credits"], "Credits and licences", summary, html, "page")


def draw_access(site: Site) -> Rendered:
    """What is done so that everyone can use the pages, how that was tried, and whom to tell."""
    html = site.draw("access.html", LISTS["access"], contact=site.collection.reference.imprint.contact)
    summary = "What we do so that everyone can use these pages, how it was tested, and what we do not know."
    return Rendered(LISTS["access"], "Access for everyone", summary, html, "page")
