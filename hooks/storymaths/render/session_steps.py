"""The steps of a session, each with what belongs in it: the stops of the pages it reads, and the main task in its place."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from ..model.body import Body, Runs, words_of_runs
from ..model.session import Session, Step, Stop
from ..parse.body import words_of

_PAGES = r"pages? (?P<list>\d+(?:(?:,? (?:to|and|or) |, | ?[-–] ?)\d+)*)"
_NAMED = re.compile(_PAGES, re.IGNORECASE)
_READ = re.compile(
    rf"(?<!not )\b(?:read(?P<up_to> as far as| (?:on )?to)?|show|back to|back over|turn to|open the book at) {_PAGES}",
    re.IGNORECASE,
)
_STRETCH = re.compile(r"(\d+)(?:(?: to | ?[-–] ?)(\d+))?")


@dataclass(frozen=True, slots=True)
class ShownStep:
    """A step, and the stops made in it."""

    step: Step
    stops: Sequence[Stop]
    is_main: bool
    """Whether the main task is done in it."""


def steps_with_stops(session: Session, body: Body) -> tuple[list[ShownStep], list[Stop]]:
    """The steps with their stops, and the stops that are in none of them.

    A stop is made in the first step, from that of the stop before it, whose words read its page ("Read pages 7 and 8");
    if none reads it, in one that names it; if none does, in the next that reads. The main task is done in the longest
    step, the later of two: what comes before it shows how.
    """
    told = [words_of_step(step, body) for step in session.steps]
    read, named = ([_pages(pattern, words) for words in told] for pattern in (_READ, _NAMED))
    placed: list[list[Stop]] = [[] for _ in told]
    left, at = [], 0
    for stop in (stop for reading in session.reads for stop in reading.stops):
        found = _step_of(stop.page, read, named, at)
        if found is None:
            left.append(stop)
        else:
            at = found
            placed[at].append(stop)
    main = max(range(len(told)), key=lambda row: (session.steps[row].minutes, row))
    shown = [
        ShownStep(step, stops, row == main)
        for row, (step, stops) in enumerate(zip(session.steps, placed, strict=True))
    ]  # fmt: skip
    return shown, left


def _step_of(page: int, read: Sequence[set[int]], named: Sequence[set[int]], start: int) -> int | None:
    rows = range(start, len(read))
    fitting = (
        *(row for row in rows if page in read[row]),
        *(row for row in rows if page in named[row]),
        *(row for row in rows if read[row]),
    )
    return next(iter(fitting), None)


def words_of_step(step: Step, body: Body) -> str:
    """A step's name and all that the body tells of it."""
    lines = (words_of_runs(runs) for runs in _lines_of_step(step, body))
    return " ".join(" ".join((words_of(step.name), ".", *lines)).split())


def line_that_reads(page: int, step: Step, body: Body) -> int:
    """The line of a step where its words first read a page, or else first name it; 0 where they do neither."""
    lines = _lines_of_step(step, body)
    told = ((pattern, runs) for pattern in (_READ, _NAMED) for runs in lines if runs)
    return next((runs[0].line for pattern, runs in told if page in _pages(pattern, words_of_runs(runs))), 0)


def _lines_of_step(step: Step, body: Body) -> list[Runs]:
    name = words_of(step.name)
    blocks = next((section.blocks for section in body.sections if section.heading.words == name), ())
    return list(Body(blocks).lines)


def _pages(pattern: re.Pattern[str], words: str) -> set[int]:
    return {
        page
        for match in pattern.finditer(words)
        for first, last in _STRETCH.findall(match["list"])
        for page in range(1 if match.groupdict().get("up_to") else int(first), int(last or first) + 1)
    }
