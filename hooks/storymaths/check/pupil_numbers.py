"""Numbers in the prose that pupils meet, in figures or words, told apart from pages, minutes, years, codes and quantities."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass

from ..model.any_book import AnyBook
from ..model.collection import Collection
from ..model.document import Document
from ..model.home import Home
from ..model.prose import VULGAR, Numeral
from ..model.reference import Reference
from ..model.session import Session
from .adult_matters import is_an_adults
from .numbers_in_words import fractions_in_words, numbers_in_words

_PARTED = re.compile("[0-9][,./][0-9]")
_VULGAR_FRACTION = re.compile(f"[{''.join(VULGAR)}]")
PupilPage = Document[Session] | Document[Home] | Document[AnyBook]
# What stands just before a number that is not a pupil's: page 12, pages 4 to 12, Year 2, session 3, ages 5-6.
_NOT_A_PUPILS_BEFORE = re.compile(
    r"(?:\b(?:pages?|p\.|years?|sessions?|steps?|ages?|aged|class of|groups? of|key stage|version|sheet|chapter|"
    r"figure|in|since)[ ]+(?:\d+(?:[ ]?(?:to|and|or|,|–|-)[ ]?)+)*|\d:|\b\w*[A-Z]-?|[$]|\d-)$",
    re.IGNORECASE,
)
_NOT_A_PUPILS_AFTER = re.compile(
    r"(?:[ -]?(?:minutes?|mins?|seconds?|hours?|weeks?|days?|months?|years?|year-olds?|pages?|sessions?|children|"
    r"pupils?|adults?|copies|sheets?|pairs?|sets?|a\.m\.|p\.m\.)\b"
    r"|, about \d+ minutes"  # to get ready, "for thirty, about 10 minutes"
    r"|[ ]?(?:to|or|and|–|-)[ ]?\d+[ -]?(?:minutes?|seconds?|hours?|weeks?|days?|years?|pages?)\b|:\d\d|[A-Z]+-?\d)"
)
_THINGS = re.compile(r"[ ](?:of the |of these )?((?:[A-Za-z-]+[ ]?){1,4})")


@dataclass(frozen=True, slots=True)
class Found:
    """A pupil's number, its page, and the year it is read in."""

    page: PupilPage
    numeral: Numeral
    year: int


def pupil_pages(collection: Collection) -> Iterator[PupilPage]:
    """The pages whose words are for pupils of a stated year."""
    yield from collection.of_kind(Session)
    yield from collection.at_home


def year_at(page: PupilPage, offset: int) -> int:
    """The year whose reach holds at a position in the prose: the page's own, or its bend's."""
    bend = page.prose.part_at(offset).year
    return page.fields.year if bend is None else bend


def youngest(page: PupilPage) -> int:
    """The youngest year a page has words for."""
    bends = page.fields.bends if isinstance(page.fields, Session) else ()
    return int(min((page.fields.year, *bends)))


def numbers_beyond(collection: Collection, beyond: Callable[[PupilPage, Numeral, int], bool]) -> Iterator[Found]:
    """Pupils' numbers for which ``beyond(page, numeral, year)`` holds."""
    for page in pupil_pages(collection):
        least = youngest(page)
        largest = collection.reference.years[least].largest_number
        figures = page.prose.numerals if _may_hold_larger(page.prose.text, largest) else ()
        for numeral in (*figures, *numbers_in_words(page.prose, largest), *fractions_in_words(page.prose)):
            # What suits the youngest year concerned suits them all; only the others are looked at closely.
            if not beyond(page, numeral, least):
                continue
            year = year_at(page, numeral.start)
            if beyond(page, numeral, year) and not _is_not_a_pupils(page, numeral, collection.reference):
                yield Found(page, numeral, year)


def _may_hold_larger(text: str, number: int) -> bool:
    """Whether a text has a numeral as long as ``number``, a decimal or a fraction: most pages have none."""
    # Plain patterns that open with one class of letters; one pattern with choices in it takes three times as long.
    long_enough = re.compile("[0-9]" * len(str(number)))
    return any(pattern.search(text) for pattern in (long_enough, _PARTED, _VULGAR_FRACTION))


def is_below_zero(text: str, numeral: Numeral) -> bool:
    """Whether a minus sign makes the number negative rather than takes it away from one before it."""
    before = text[max(0, numeral.start - 4) : numeral.start]
    return before.endswith("−") and not re.search(r"[\d)½¼¾] ?−$", before)


def _is_not_a_pupils(page: PupilPage, numeral: Numeral, reference: Reference) -> bool:
    text = page.prose.text
    before, after = text[max(0, numeral.start - 40) : numeral.start], text[numeral.end : numeral.end + 60]
    if _NOT_A_PUPILS_BEFORE.search(before) or _NOT_A_PUPILS_AFTER.match(after):
        return True
    if _counts_materials(after, reference) or is_an_adults(text, numeral, reference):
        return True
    # A child's wrong idea is often a number too large: 2003 for two hundred and three.
    loc = page.prose.passage_at(numeral.start).loc
    return loc[0] == "misconceptions" and loc[-1] == "says"


def _counts_materials(after: str, reference: Reference) -> bool:
    """Whether the words after a number are things to get ready: "30 interlocking cubes", "120 small buttons"."""
    words = _THINGS.match(after)
    if words is None:
        return False
    run = words.group(1).strip().lower().split()
    names = reference.material_names
    return any(" ".join(run[i:j]) in names for i in range(len(run)) for j in range(i + 1, len(run) + 1))
