"""Pages, minutes and numbers of things that a page's front matter, or its book, contradicts."""

from __future__ import annotations

from collections.abc import Iterator

from ..claims.lesson_frame import (
    Contradiction,
    minutes_of_session,
    minutes_of_step,
    pages_past_the_end,
    things_for_each,
    things_to_find,
)
from ..claims.told_frame import (
    pages_in_all,
    pages_left_out,
    pages_not_read,
    pages_of_home,
    size_of_groups,
    stops_not_listed,
    stops_told,
    year_of_reason,
)
from ..model.at_home import AtHome
from ..model.collection import Collection
from ..model.document import Document
from ..model.fields import year_name
from ..model.home import Home
from ..model.page_fields import PageFields
from ..model.problem import Problem
from ..model.rule import HOUSE_RULE, Rule
from ..model.session import Session

RULE = Rule(
    name="lesson-contradicted",
    says="Pages, minutes and numbers in a page's words are those of its front matter, its activities and its book.",
    why="Two numbers for one thing, and the teacher prepares the wrong one.",
    source=HOUSE_RULE,
    wrong="steps: [{name: Build, minutes: 8}] … (9 minutes)",
    right="steps: [{name: Build, minutes: 8}] … (4 minutes)",
    since="0.2.0",
)
_FIX = "make the two agree."


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each number that cannot be so."""
    for page in collection.documents:
        for start, words, so in _found(page, collection):
            yield _problem(page, words, so, start=start)
        summary, book = page.raw.get("summary"), collection.book_of(page)
        if book and isinstance(summary, str) and (words := pages_in_all(summary, book.fields.pages)):
            place = page.place("summary", within=words)
            yield RULE.problem(place, f'"{words}" cannot be: the book has {book.fields.pages} pages.', _FIX)
        if isinstance(page.fields, Session):
            minutes = {step.name: step.minutes for step in page.fields.steps}
            for section in page.content.sections if "minute" in page.body and "(" in page.body else ():
                if section.heading.words in minutes:
                    for line, words, so in minutes_of_step(section, minutes[section.heading.words]):
                        yield _problem(page, words, so, line=line)
            for year, bend in page.fields.bends.items():
                if words := year_of_reason(year, bend.why):
                    place = page.place("bends", year or "Reception", "why", within=words)
                    yield RULE.problem(place, f'"{words}" cannot be: this bend is to {year_name(year)}.', _FIX)


def _found(page: Document[PageFields], collection: Collection) -> Iterator[Contradiction]:
    book = collection.book_of(page)
    if book is not None:
        yield from pages_past_the_end(page.prose, book.fields.pages)
    fields, materials = page.fields, collection.reference.materials
    if isinstance(fields, Session):
        yield from minutes_of_session(page.prose, fields.minutes)
        yield from pages_not_read(page.prose, fields)
        yield from pages_left_out(page.prose, fields)
        yield from stops_not_listed(page.prose, fields)
        yield from stops_told(page.prose, fields)
        yield from size_of_groups(page.prose, fields)
        if all(needed.item in materials for needed in fields.materials):
            yield from things_for_each(page.prose, fields, [materials[needed.item] for needed in fields.materials])
    elif isinstance(fields, AtHome):
        if isinstance(fields, Home):
            yield from pages_of_home(page.prose, fields)
        if all(thing.item in materials for thing in fields.things):
            yield from things_to_find(page.prose, fields, [materials[thing.item] for thing in fields.things])


def _problem(page: Document[PageFields], words: str, so: str, *, start: int = 0, line: int = 0) -> Problem:
    place = page.place_on_line(line, words) if line else page.place_in_prose(start, words)
    return RULE.problem(place, f'"{words}" cannot be: {so}.', _FIX)
