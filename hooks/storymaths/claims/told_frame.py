"""What a plan's words say of its frame: which pages are read, how often it is stopped, how large groups are.

It reads "Read pages 6 and 7", a page in the place of the one that is left out, "page 6 and stop", "the three stops",
"stop three times", "Groups of five" where no other size is said, "in fourteen pages", and a bend's reason that opens
with its year. It leaves all that is said of pages in other words.
Source: the page's own front matter and the book's record.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator
from itertools import islice

from ..model.home import Home
from ..model.prose import Prose
from ..model.session import Session
from .form import Form
from .lesson_frame import PAGES, Contradiction
from .number_words import NUMBER_IN_WORDS, number_in_words

_N = rf"(?:\d+(?![\w/%°-]|[.,:]\d)|{NUMBER_IN_WORDS})"
_READ = Form(r"ead pages? (?P<one>\d+)(?:(?P<way> to | and | or |, |–|-)(?P<other>\d+))?(?![\w%]|, \d| and \d)")
"""This and those below open with plain letters, which are looked for many times as fast."""
_FIGURES, _TO = Form(r"\d+"), Form(r"to|–|-")
_AND_STOP = Form(r"(?:,| and) (?:stop|ask|talk)\b(?! where| when)")
_STOPS_HERE = Form(r"(?:,? and|,) stop\b(?! where| when| at |,? before)")
_AT_STOPS = Form(rf"at the (?P<count>{_N}) stops\b")
_STOP_TIMES = Form(rf"stop (?P<count>{_N}) times\b")
_GROUPS = Form(
    rf"groups of (?P<count>{_N})(?= (?:have|has|share|begin|get|sit|take|check|need|work|go|lay|stand|and|put)\b|[,.])"
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
            yield _told(prose, match, f"reads: has no page {beyond[0]}")
        elif (
            not beyond and stops and is_stop and ends[1] not in stops and not _STOPS_HERE.match(prose.text, match.end())
        ):
            yield _told(prose, match, f"reads: has no stop on page {ends[1]}")


def pages_left_out(prose: Prose, session: Session) -> Iterator[Contradiction]:
    """A page in the place of one that is to be read: its neighbour, named twice or not to be read, where all others are named."""
    plan = {page for reading in session.reads for page in range(reading.pages.first, reading.pages.last + 1)}
    named = list(_pages_under(prose)) if len(plan) > 1 and "page" in prose.words else []
    times = Counter(page for page, _ in named)
    left_out = sorted(plan - times.keys())
    if len(left_out) != 1:
        return
    for page, match in named:
        if abs(page - left_out[0]) == 1 and (page not in plan or times[page] > 1):
            yield _told(prose, match, f"page {left_out[0]} is read, and is the one that is not named")
            return


def stops_not_listed(prose: Prose, session: Session) -> Iterator[Contradiction]:
    """Pages named with "and stop" straight after them that the plan reads and has no stop on."""
    stops = {stop.page for reading in session.reads for stop in reading.stops}
    if not stops or "stop" not in prose.words:
        return
    last = {match.end(): (page, match) for page, match in _pages_under(prose)}
    for end, (page, match) in last.items():
        is_read = any(page in reading.pages for reading in session.reads)
        if is_read and page not in stops and _STOPS_HERE.match(prose.text, end):
            yield _told(prose, match, f"reads: has no stop on page {page}")


def _pages_under(prose: Prose) -> Iterator[tuple[int, re.Match[str]]]:
    """Each page that the text under the front matter names, a stretch page by page."""
    for match in PAGES.finditer(prose.text, prose.parts[-1].start):
        if prose.lowered[max(0, match.start() - 2) : match.start()].lstrip(' \n("“') == "p":
            ends = [int(number.group()) for number in _FIGURES.finditer(match["list"])]
            stretch = range(ends[0], ends[-1] + 1) if _TO.search(match["list"]) else ends
            yield from ((page, match) for page in stretch)


def pages_of_home(prose: Prose, home: Home) -> Iterator[Contradiction]:
    """Pages to read first that are other than those a home activity goes with."""
    for match in islice(_read_in(prose), 1):
        if (int(match["one"]), int(match["other"] or match["one"])) != home.pages:
            yield _told(prose, match, f"the front matter has {home.pages}")


def _read_in(prose: Prose) -> Iterator[re.Match[str]]:
    """Where the text under the front matter says to read some pages."""
    if "read" in prose.words and {"page", "pages"} & prose.words:
        for match in _READ.finditer(prose.text, prose.parts[-1].start):
            if prose.lowered[match.start() - 2 : match.start()].lstrip(' \n("“‘*.') == "r":
                yield match


def _told(prose: Prose, match: re.Match[str], so: str) -> Contradiction:
    """A match that opens after its first letter, as a contradiction."""
    start = match.start() - 1
    return Contradiction(start, prose.text[start : match.end()], so)


def stops_told(prose: Prose, session: Session) -> Iterator[Contradiction]:
    """How often it is said to stop, where that is neither all the stops nor those of one reading."""
    counts = {len(reading.stops) for reading in session.reads}
    counts |= {sum(len(reading.stops) for reading in session.reads)}
    forms = [form for word, form in (("stops", _AT_STOPS), ("times", _STOP_TIMES)) if word in prose.words]
    for match in (match for form in forms for match in form.finditer(prose.lowered)):
        if _worth(match["count"]) not in counts:
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


def pages_in_all(summary: str, pages: int) -> str:
    """The words of a summary that say the story is in another number of pages than its book has; empty if none do."""
    match = _IN_PAGES.search(summary.lower()) if " pages" in summary else None
    return summary[match.start() : match.end()] if match and _worth(match["count"]) != pages else ""


def year_of_reason(year: int, why: str) -> str:
    """The words that name a year where a bend's reason opens with another than the bend's; empty where it does not."""
    match = _YEAR.match(why.lower())
    return why[: match.end()] if match and int(match["year"]) != year else ""


def _worth(text: str) -> int:
    return int(text) if text.isdigit() else number_in_words(text)
