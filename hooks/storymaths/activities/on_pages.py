"""The activities of a page: fenced data found in its body, and each worked out with its book and year."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import partial
from posixpath import dirname
from typing import Any

from ..check.mistake_is_true import mistakes_that_are_none
from ..check.number_sentence_untrue import untruths
from ..model.bend import YearBend
from ..model.body import ACTIVITY, Fence
from ..model.collection import Collection
from ..model.document import Document, Loc
from ..model.home import Home
from ..model.page_fields import OfBook, PageFields
from ..model.problem import Place, Problem
from ..model.prose import PlacedText
from ..model.session import Session
from ..parse.prose import words_in
from ..parse.yaml_text import YamlLocator
from .memory import Memory
from .rules import BROKEN, FACT_MISSING, TWICE
from .told_ways import check_told
from .work_out import WorkedOut, work_out

_USUAL_YEAR = 2
"""For pages that name no year, such as the collection's own pages."""
_SAID = ("title", "ask", "because")
_NOT_THE_DATA = frozenset({"id", "title", "ask", "answers", "at_most", "wished"})


@dataclass(frozen=True, slots=True)
class PageActivity:
    """An activity where it stands in a page's body."""

    fence: Fence
    place: Place
    """Of the opening fence."""
    worked: WorkedOut


PageActivities = Mapping[str, tuple[PageActivity, ...]]
"""The activities of every page, by its path."""


def work_out_pages(collection: Collection, memory: Memory[WorkedOut] | None = None) -> PageActivities:
    """Every activity of every page. What ``memory`` holds is not solved again."""
    return {page.path: activities_of(page, collection, memory) for page in collection.documents}


def activities_of(
    document: Document[PageFields], collection: Collection, memory: Memory[WorkedOut] | None = None
) -> tuple[PageActivity, ...]:
    """Every activity of a page in the order of the page, worked out as far as it can be."""
    return tuple(_worked(fence, document, collection, memory) for fence in document.content.activities)


def bends_of(fields: PageFields) -> Mapping[int, YearBend] | None:
    """How a page bends to other years; None for a kind of page that does not."""
    return fields.bends if isinstance(fields, Session | Home) else None


def check_activities(pages: PageActivities, documents: Sequence[Document[PageFields]] = ()) -> list[Problem]:
    """Every problem of every activity, and of what ``documents`` say of them, in the order of files and lines."""
    problems: list[Problem] = []
    printed = {page.path: page for page in documents if page.written}
    for activities in pages.values():
        for activity in activities:
            problems += activity.worked.problems
            for text in texts_of(activity):
                problems += [*untruths(text), *mistakes_that_are_none(text)]
        problems += _twice(activities)
    problems = [
        replace(p, place=page.as_written(p.place)) if (page := printed.get(p.place.path)) else p for p in problems
    ]
    for page in documents:
        worked = {one.fence.line: done for one in pages.get(page.path, ()) if (done := one.worked.done)}
        problems += check_told(page, worked) if worked else ()
    return sorted(set(problems))


def texts_of(activity: PageActivity) -> Iterator[PlacedText]:
    """What its author says in an activity, in words, with the places of it."""
    data, fence = activity.worked.raw, activity.fence
    versions = data.get("years")
    stated = [
        ((), data),
        *((("years", year), one) for year, one in (versions.items() if isinstance(versions, dict) else ())),
    ]
    for loc, values in stated:
        for key in _SAID if isinstance(values, dict) else ():
            if isinstance(text := values.get(key), str):
                words = words_in(text)
                yield PlacedText(words, partial(_place_in, fence, activity.place.path, (*loc, key), words))


def _place_in(fence: Fence, path: str, loc: Loc, said: str, offset: int, words: str) -> Place:
    place = YamlLocator(path, fence.text, fence.line).place(loc, words, said[:offset])
    return replace(place, column=place.column + fence.column - 1)


def _twice(activities: tuple[PageActivity, ...]) -> Iterator[Problem]:
    first: dict[str, PageActivity] = {}
    for activity in activities:
        data = activity.worked.raw
        if not data:
            continue
        same = first.setdefault(_what_it_asks(data), activity)
        if same is not activity:
            yield TWICE.problem(
                activity.place,
                f"This activity has the same data as the one on line {same.place.line}.",
                "change its numbers, or take one of the two out.",
            )


def _what_it_asks(data: Mapping[str, Any]) -> str:
    return repr(sorted((key, repr(value)) for key, value in data.items() if key not in _NOT_THE_DATA))


def _worked(
    fence: Fence, document: Document[PageFields], collection: Collection, memory: Memory[WorkedOut] | None
) -> PageActivity:
    place = Place(document.path, fence.line, fence.column)
    if not fence.closed:
        unclosed = BROKEN.problem(place, "This activity is never closed.", "add a line with ``` under its last line.")
        return PageActivity(fence, place, WorkedOut(None, None, None, None, {}, (unclosed,)))
    record, year = collection.book_of(document), document.fields.best_year
    book, folder = (record.fields, dirname(record.source)) if record else (None, "")
    session = document.fields if isinstance(document.fields, Session) else None
    worked = work_out(
        fence.text,
        document.path,
        fence.line + 1,
        book,
        _USUAL_YEAR if year is None else year,
        collection.reference,
        folder=folder,
        bends=bends_of(document.fields),
        signs=collection.reference.signs_chosen(session) if session else (),
        unmet=collection.signs_to_come(session) if session else (),
        memory=memory,
    )
    indent = fence.column - 1
    # A book that is not there, or cannot be read, is told by its own rule; that its cast is missing follows from it.
    told = {FACT_MISSING.name} if record is None and isinstance(document.fields, OfBook) else set()
    shifted = tuple(
        replace(p, place=replace(p.place, column=p.place.column + indent))
        for p in worked.problems
        if p.rule not in told
    )
    if fence.info != ACTIVITY:
        message = f"An activity is marked ```{ACTIVITY}; this one is marked ```{fence.info}."
        shifted = (BROKEN.problem(place, message, f"write ```{ACTIVITY}"), *shifted)
    return PageActivity(fence, place, replace(worked, problems=shifted))
