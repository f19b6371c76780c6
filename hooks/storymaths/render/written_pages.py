"""Pages as their authors wrote them: home activities and plain pages."""

from __future__ import annotations

from ..model.document import Document
from ..model.home import Home
from ..model.page import Page
from .activity import body_with_activities
from .bends import shown_bends
from .site import Rendered, Site


def draw_home(site: Site, page: Document[Home]) -> Rendered:
    """A home activity: what, how long, what you need, what to say first; then the rest."""
    home, source, reference = page.fields, page.source, site.collection.reference
    html = site.draw_with_words(
        "home_activity.html",
        source,
        page=page,
        home=home,
        book=site.collection.books[home.book],
        story=site.collection.stories.get(home.book),
        others=[other for other in site.collection.homes_of(home.book) if other is not page],
        bends=shown_bends(site, page),
        body=body_with_activities(site, page, source, level=3),
        words=[reference.words[word] for word in home.words if word in reference.words],
    )
    return Rendered(source, home.title, home.summary, html, "home")


def draw_plain(site: Site, page: Document[Page]) -> Rendered:
    """A plain page."""
    body = body_with_activities(site, page, page.source, level=3)
    html = site.draw("plain.html", page.source, page=page, body=body)
    return Rendered(page.source, page.fields.title, page.fields.summary, html, "page")
