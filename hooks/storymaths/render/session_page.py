"""A session, in the order a teacher uses it."""

from __future__ import annotations

from collections.abc import Sequence

from ..model.address import screen_page
from ..model.body import Block, Paragraph
from ..model.document import Document
from ..model.reference import Reference
from ..model.session import Session
from ..parse.body import words_of
from .activity import activities_drawn
from .answers_apart import draw_answers_apart
from .bends import shown_bends
from .body import draw_blocks
from .objectives import shown as shown_objectives
from .screens.pages import slides_on_screen
from .session_steps import steps_with_stops
from .site import Rendered, Site

_LONGEST_SHOWN = 60


def lasting(minutes: int) -> int:
    """Minutes as the timetable shows their length: to the nearest five, from 5 to 60."""
    return min(_LONGEST_SHOWN, max(5, 5 * round(minutes / 5)))


def _things(session: Session, reference: Reference) -> list[str]:
    """What is to be got ready, each by its name once."""
    items = dict.fromkeys((needed.item, needed.count == 1) for needed in session.materials)
    names = (reference.materials[item].name if one else reference.materials[item].plural for item, one in items)
    return list(dict.fromkeys(names))


def draw_session(site: Site, page: Document[Session]) -> Rendered:
    """The page of a session."""
    session, source, reference = page.fields, page.source, site.collection.reference
    book = site.collection.books[session.book]
    run = site.collection.sessions_of(session.book)
    draw_fence = activities_drawn(site, page, source)
    told = {one.heading.words: draw_blocks(one.blocks, source, draw_fence) for one in page.content.sections}
    steps, left_stops = steps_with_stops(session, page.content)
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
        minutes_before=_minutes_before(page.content.opening),
        steps=[(shown, told.get(words_of(shown.step.name), "")) for shown in steps],
        first_stops=next((shown.stops for shown in steps if shown.stops), left_stops),
        left_stops=left_stops,
        objectives=shown_objectives(session.objectives, reference),
        revisited=shown_objectives(session.revisits, reference),
        bends=[
            (bent, shown_objectives(session.bends[bent.year].objectives, reference)) for bent in shown_bends(site, page)
        ],
        new_words=[reference.words[word] for word in session.words.new if word in reference.words],
        known_words=[reference.words[word] for word in session.words.again if word in reference.words],
        things=_things(session, reference),
        writes=reference.years[session.year].writes,
        lasting=lasting,
        class_size=reference.limits.class_size,
        screen=screen_page(source),
        slides=1 + sum(slide.part is None or slide.part.own for slide in slides_on_screen(site, page)),
    )
    return Rendered(source, session.title, session.summary, html + draw_answers_apart(site, page), "session")


def _minutes_before(opening: Sequence[Block]) -> str:
    """What an author says first, leaning, of how long it takes to get ready; empty where nothing is said."""
    first = next((block for block in opening if isinstance(block, Paragraph)), None)
    leaning = [run.text for run in (first.runs if first else ()) if any(mark.name == "emphasis" for mark in run.marks)]
    return next((text.rstrip(".,:") for text in leaning[:1] if "minute" in text), "")
