"""What a plan's words say of its frame: which pages are read, how often it is stopped, how large groups are.

It reads "Read pages 6 and 7", "the three stops", "stop three times", "Groups of five" where no other size is said, "in
fourteen pages", and a bend's reason that opens with its year. It leaves all that is said of pages in other words.
Source: the page's own front matter and the book's record.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import islice

from ..model.home import Home
from ..model.prose import Prose
from ..model.session import Session
from .form import Form
from .lesson_frame import Contradiction
from .number_words import NUMBER_IN_WORDS, number_in_words

_N = rf"(?:\d+(?![\w/%°-]|[.,:]\d)|{NUMBER_IN_WORDS})"
_READ = Form(
    r"(?<![a-z’'])[Rr]ead pages? (?P<one>\d+)(?:(?P<way> to | and | or |, |–|-)(?P<other>\d+))?(?![\w%]|, \d| and \d)"
)
_AND_STOP = Form(r"(?:,| and) (?:stop|ask|talk)\b(?! where| when)")
_STOPS = Form(rf"(?:\bat the (?P<count>{_N}) stops\b|\bstop (?P<times>{_N}) times\b)")
_GROUPS = Form(
    rf"\bgroups of (?P<count>{_N})(?= (?:have|has|share|begin|get|sit|take|check|need|work|go|lay|stand|and|put)\b|[,.])"
)
_IN_PAGES = Form(rf"\bin (?P<count>{_N}) pages\b")
_YEAR = Form(r"year (?P<year>\d)\b(?![–-])")


def pages_not_read(prose: Prose, session: Session) -> Iterator[Contradiction]:
    """Pages to read or to stop at that are none of those the plan lists; reading on past them is free."""
    stops = {stop.page for reading in session.reads for stop in reading.stops}
    for match in _read_in(prose) if session.reads else ():
        ends = int(match["one"]), int(match["other"] or match["one"])
        beyond = [page for page in ends if not any(page in reading.pages for reading in session.reads)]
        is_stop = _AND_STOP.match(prose.text, match.end()) is not None
        is_off = any((ends[0] == one.pages.first) != (ends[1] == one.pages.last) for one in session.reads)
        if (is_off and match["other"] and len(beyond) == 1) or (beyond and is_stop):  # reading on is free
            yield Contradiction(match.start(), match.group(), f"reads: has no page {beyond[0]}")
        elif not beyond and stops and is_stop and ends[1] not in stops:
            yield Contradiction(match.start(), match.group(), f"reads: has no stop on page {ends[1]}")


def pages_of_home(prose: Prose, home: Home) -> Iterator[Contradiction]:
    """Pages to read first that are other than those a home activity goes with."""
    for match in islice(_read_in(prose), 1):
        if match["other"] and (int(match["one"]), int(match["other"])) != home.pages:
            yield Contradiction(match.start(), match.group(), f"the front matter has {home.pages}")


def _read_in(prose: Prose) -> Iterator[re.Match[str]]:
    """Where the text under the front matter says to read some pages."""
    if "read" in prose.words and {"page", "pages"} & prose.words:
        body = prose.parts[-1].start
        yield from _READ.finditer(prose.text, body)


def stops_told(prose: Prose, session: Session) -> Iterator[Contradiction]:
    """How often it is said to stop, where that is neither all the stops nor those of one reading."""
    counts = {len(reading.stops) for reading in session.reads}
    counts |= {sum(len(reading.stops) for reading in session.reads)}
    for match in _STOPS.finditer(prose.lowered) if {"stop", "stops"} & prose.words else ():
        if _worth(match["count"] or match["times"]) not in counts:
            said = " or ".join(map(str, sorted(counts - {0})))
            yield Contradiction(match.start(), match.group(), f"reads: has {said or 'no'} stops")


def size_of_groups(prose: Prose, session: Session) -> Iterator[Contradiction]:
    """Groups of one size all through the plan, and another in its front matter."""
    if session.group_size is None or "groups" not in prose.words:
        return
    told = [match for match in _GROUPS.finditer(prose.lowered) if prose.part_at(match.start()).year is None]
    sizes = {_worth(match["count"]) for match in told}
    if len(sizes) == 1 and sizes != {session.group_size}:
        match = told[0]
        yield Contradiction(match.start(), match.group(), f"group_size: {session.group_size}")


def pages_in_all(prose: Prose, pages: int) -> Iterator[Contradiction]:
    """A story said to be in another number of pages than its book has."""
    for match in _IN_PAGES.finditer(prose.lowered) if "pages" in prose.words else ():
        if _worth(match["count"]) != pages and prose.part_at(match.start()).loc == ("summary",):
            yield Contradiction(match.start(), match.group(), f"the book has {pages} pages")


def year_of_reason(year: int, why: str) -> str:
    """The words that name a year where a bend's reason opens with another than the bend's; empty where it does not."""
    match = _YEAR.match(why.lower())
    return why[: match.end()] if match and int(match["year"]) != year else ""


def _worth(text: str) -> int:
    return int(text) if text.isdigit() else number_in_words(text)
