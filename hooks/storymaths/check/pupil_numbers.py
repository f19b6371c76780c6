"""Numbers in the prose that pupils meet, told apart from pages, minutes, years, codes and quantities."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass

from ..model.collection import Collection
from ..model.document import Document
from ..model.home import Home
from ..model.session import Session
from ..parse.number_sentence import VULGAR

PupilPage = Document[Session] | Document[Home]
_V = "".join(VULGAR)
NUMBER = re.compile(
    rf"(?<![\w.,/−])(?P<minus>−)?(?:(?P<vulgar>[{_V}])|(?P<above>\d+)/(?P<below>\d+)"
    r"|(?P<whole>\d{1,3}(?:,\d{3})+|\d+)(?:\.(?P<places>\d+))?)(?![\w/]*\d)"
)
# What stands just before a number that is not a pupil's: page 12, pages 4 to 12, Year 2, session 3, ages 5-6.
_NOT_A_PUPILS_BEFORE = re.compile(
    r"(?:\b(?:pages?|p\.|years?|sessions?|steps?|ages?|aged|number line to|class of|group(?:s)? of|key stage|version|"
    r"sheet|part|chapter|figure|in|since)[ ]+(?:\d+(?:[ ]?(?:to|and|or|,|–|-)[ ]?)+)*|\d:|[A-Z]{2,}-?|[£$]?\d-)$",
    re.IGNORECASE,
)
_NOT_A_PUPILS_AFTER = re.compile(
    r"(?:[ -]?(?:minutes?|mins?|seconds?|hours?|weeks?|days?|months?|years?|year-olds?|pages?|sessions?|children|"
    r"pupils?|adults?|times over|copies|sheets?|pairs?|sets?|a\.m\.|p\.m\.)\b"
    r"|[ ]?(?:to|or|and|–|-)[ ]?\d+[ -]?(?:minutes?|seconds?|hours?|weeks?|days?|years?|pages?)\b|:\d\d|[A-Z]+-?\d)"
)


@dataclass(frozen=True, slots=True)
class Found:
    """A pupil's number: the match, its page, and the year it is read in."""

    page: PupilPage
    match: re.Match[str]
    year: int


def pupil_pages(collection: Collection) -> Iterator[PupilPage]:
    """The pages whose words are for pupils of a stated year."""
    yield from collection.of_kind(Session)
    yield from collection.of_kind(Home)


def year_at(page: PupilPage, offset: int) -> int:
    """The year whose reach holds at a position in the prose: the page's own, or its bend's."""
    bend = page.prose.passage_at(offset).year
    return page.fields.year if bend is None else bend


def numbers_beyond(collection: Collection, beyond: Callable[[re.Match[str], int], bool]) -> Iterator[Found]:
    """Pupils' numbers for which ``beyond(match, year)`` holds."""
    for page in pupil_pages(collection):
        text = page.prose.text
        for match in NUMBER.finditer(text):
            # A number fine in the youngest year concerned is fine; only the others are looked at closely.
            if not beyond(match, page.fields.year) and not (isinstance(page.fields, Session) and page.fields.bends):
                continue
            year = year_at(page, match.start())
            if beyond(match, year) and not _is_not_a_pupils(text, match, collection):
                yield Found(page, match, year)


def _is_not_a_pupils(text: str, match: re.Match[str], collection: Collection) -> bool:
    before, after = text[max(0, match.start() - 40) : match.start()], text[match.end() : match.end() + 60]
    if _NOT_A_PUPILS_BEFORE.search(before) or _NOT_A_PUPILS_AFTER.match(after):
        return True
    return _counts_materials(after, collection)


def _counts_materials(after: str, collection: Collection) -> bool:
    """Whether the words after a number are things to get ready: "30 interlocking cubes", "120 small buttons"."""
    words = re.match(r"[ ](?:of the |of these )?((?:[A-Za-z-]+[ ]?){1,4})", after)
    if words is None:
        return False
    run = words.group(1).strip().lower().split()
    names = _material_names(collection)
    return any(" ".join(run[i:j]) in names for i in range(len(run)) for j in range(i + 1, len(run) + 1))


def _material_names(collection: Collection) -> frozenset[str]:
    return frozenset(
        name.lower()
        for material in collection.reference.materials.values()
        for name in (material.name, material.plural, *material.also)
    )
