"""A session, in the order a teacher uses it."""

from __future__ import annotations

from ..model.address import screen_page
from ..model.document import Document
from ..model.session import Session
from ..parse.body import words_of
from .activity import activities_drawn
from .answers_apart import draw_answers_apart
from .bends import shown_bends
from .body import draw_blocks
from .objectives import shown
from .screens.pages import slides_on_screen
from .site import Rendered, Site

_LONGEST_SHOWN = 60


def lasting(minutes: int) -> int:
    """Minutes as the timetable shows their length: to the nearest five, from 5 to 60."""
    return min(_LONGEST_SHOWN, max(5, 5 * round(minutes / 5)))


def draw_session(site: Site, page: Document[Session]) -> Rendered:
    """The page of a session."""
    session, source, reference = page.fields, page.source, site.collection.reference
    book = site.collection.books[session.book]
    run = site.collection.sessions_of(session.book)
    draw_fence = activities_drawn(site, page, source)
    told = {one.heading.words: draw_blocks(one.blocks, source, draw_fence) for one in page.content.sections}
    place = run.index(page)
    html = site.draw_with_words(
        "session.html",
        source,
        page=page,
        session=session,
        book=book,
        run=run,
        before=run[place - 1] if place else None,
        after=run[place + 1] if place + 1 < len(run) else None,
        homes=site.collection.homes_of(session.book),
        story=site.collection.stories.get(session.book),
        opening=draw_blocks(page.content.opening, source, draw_fence),
        steps=[(step, told.get(words_of(step.name), "")) for step in session.steps],
        objectives=shown(session.objectives, reference),
        revisited=shown(session.revisits, reference),
        bends=[(bent, shown(session.bends[bent.year].objectives, reference)) for bent in shown_bends(site, page)],
        new_words=[reference.words[word] for word in session.words.new if word in reference.words],
        known_words=[reference.words[word] for word in session.words.again if word in reference.words],
        lasting=lasting,
        class_size=reference.limits.class_size,
        screen=screen_page(source),
        slides=1 + len(slides_on_screen(site, page)),
    )
    return Rendered(source, session.title, session.summary, html + draw_answers_apart(site, page), "session")
