"""The activities of a page: fenced data found in its body, and each worked out with its book and year."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from posixpath import dirname
from typing import Any

from ..model.collection import Collection
from ..model.document import Document
from ..model.page_fields import PageFields
from ..model.problem import Place, Problem
from .memory import Memory
from .rules import BROKEN, TWICE
from .work_out import WorkedOut, work_out

# A fence of any sort is matched to its end, so that one shown inside another is passed over.
_FENCED = re.compile(
    r"^(?P<indent>[ ]*)(?P<fence>`{3,}|~{3,})[ ]*(?P<info>[^\n`]*)(?:\n|\Z)"
    r"(?P<text>.*?)(?:^[ ]*(?P=fence)[`~]*[ ]*(?:\n|\Z)|(?P<open>\Z))",
    re.MULTILINE | re.DOTALL,
)
_INFO = "maths"
_USUAL_YEAR = 2
"""For pages that name no year, such as the collection's own pages."""
_NOT_THE_DATA = frozenset({"title", "ask", "answers", "at_most", "wished"})


@dataclass(frozen=True, slots=True)
class PageActivity:
    """An activity where it stands in a page's body."""

    start: int
    end: int
    """The block is ``body[start:end]``, its fences included."""
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
    if _INFO not in document.body:
        return ()
    found = [match for match in _FENCED.finditer(document.body) if match["info"].strip() == _INFO]
    return tuple(_worked(match, document, collection, memory) for match in found)


def check_activities(pages: PageActivities) -> list[Problem]:
    """Every problem of every activity, in the order of files and lines."""
    problems: list[Problem] = []
    for activities in pages.values():
        for activity in activities:
            problems += activity.worked.problems
        problems += _twice(activities)
    return sorted(set(problems))


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
    match: re.Match[str], document: Document[PageFields], collection: Collection, memory: Memory[WorkedOut] | None
) -> PageActivity:
    line = document.body_line + document.body.count("\n", 0, match.start())
    indent = len(match["indent"])
    place = Place(document.path, line, indent + 1)
    if match["open"] is not None:
        unclosed = BROKEN.problem(place, "This activity is never closed.", "add a line with ``` under its last line.")
        worked = WorkedOut(None, None, None, None, {}, (unclosed,))
        return PageActivity(match.start(), match.end(), place, worked)
    record, year = collection.book_of(document), document.fields.best_year
    book, folder = (record.fields, dirname(record.source)) if record else (None, "")
    year, also = (_USUAL_YEAR if year is None else year), tuple(sorted(document.fields.other_years))
    text = "".join(_dedented(held, indent) for held in re.findall(r"[^\n]*\n", match["text"]))
    worked = work_out(
        text, document.path, line + 1, book, year, collection.reference, folder=folder, also=also, memory=memory
    )
    shifted = tuple(replace(p, place=replace(p.place, column=p.place.column + indent)) for p in worked.problems)
    return PageActivity(match.start(), match.end(), place, replace(worked, problems=shifted))


def _dedented(line: str, indent: int) -> str:
    return line[min(indent, len(line) - len(line.lstrip(" "))) :]
