"""What a page says of its own frame: pages of the book, minutes of a step or the session, how many things each has.

It reads: page numbers past the end of the book; minutes in brackets within a step; "this 50-minute lesson"; a number of
things given to each pair, group or child where one material is meant. It leaves: pages of something else, minutes in all
other words, and fewer things than were got out. Source: the page's own front matter and the book's record.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from ..model.at_home import AtHome
from ..model.body import Body, Section, words_of_runs
from ..model.material import Material
from ..model.prose import Prose
from ..model.session import Session
from .form import Form
from .number_words import NUMBER_IN_WORDS, number_in_words
from .sentences import Sentences

PAGES = Form(  # begins with letters that are the same in all forms, which is many times as fast to look for
    r"ages? (?P<list>\d+(?:(?:,? (?:to|and|or) |, | ?[-–] ?)\d+)*)(?! of (?!the book|the story|this book|your book))(?![\w%])"
)
_MINUTES = Form(r"\((?:about )?(\d+) minutes?\)")
_LESSON = Form(
    r"\b(?:this|the|a) (?:lesson|session) (?:of|takes|lasts) (?P<n>\d+) minutes\b|\b(?:this|the) (?P<m>\d+)-minute (?:lesson|session)\b"
)
_N = rf"(?P<count>\d+(?![\w/%°-]|[.,:]\d)|{NUMBER_IN_WORDS})"
_WHO = r"(?P<who>pairs?|child|children|groups?)"
_EACH = Form(
    rf"(?:[Ee]ach|[Ee]very) {_WHO} (?P<verb>(?:has|gets|takes|needs|is given|counts out) )?(?:exactly |just )?{_N} "
    r"(?P<things>[a-z]+(?: [a-z]+){0,3})"
)
_FETCH = Form(rf"(?:^|[.!?] )(?:Find|Get|Get out|Fetch|You need) {_N} (?P<things>[a-z]+(?: [a-z]+){{0,3}})")
_PER = {"pair": "pair", "pairs": "pair", "child": "child", "children": "child", "group": "group", "groups": "group"}


class Contradiction(NamedTuple):
    """Words that the frame contradicts: where they start, the words, and what the frame says."""

    start: int
    words: str
    so: str


def pages_past_the_end(prose: Prose, pages: int) -> Iterator[Contradiction]:
    """Pages named that the book does not have."""
    if "page" not in prose.words and "pages" not in prose.words:
        return
    for match in PAGES.finditer(prose.text):
        start = match.start() - 1
        if prose.lowered[start - 1 : start + 1].lstrip(' \n("“') == "p" and any(
            int(number) > pages for number in re.findall(r"\d+", match["list"])
        ):
            yield Contradiction(start, prose.text[start : match.end()], f"the book has {pages} pages")


def minutes_of_step(section: Section, minutes: int) -> Iterator[tuple[int, str, str]]:
    """Minutes in brackets that do not fit into a step: the line, the words, and why."""
    told = [
        (runs[0].line, match)
        for runs in Body(section.blocks).lines
        if runs
        for match in _MINUTES.finditer(words_of_runs(runs))
    ]
    for line, match in told:
        if int(match[1]) > minutes:
            yield line, match.group(), f"the step has {minutes} minutes"
            return
    total = sum(int(match[1]) for _, match in told)
    if total > minutes:
        line, match = told[-1]
        yield line, match.group(), f"with the others before it that makes {total} minutes, and the step has {minutes}"


def minutes_of_session(prose: Prose, minutes: int) -> Iterator[Contradiction]:
    """A length of the session other than its own."""
    for match in _LESSON.finditer(prose.text) if "minute" in prose.words or "minutes" in prose.words else ():
        if int(match["n"] or match["m"]) != minutes and prose.part_at(match.start()).year is None:
            yield Contradiction(match.start(), match.group(), f"minutes: {minutes}")


def things_for_each(prose: Prose, session: Session, named: Sequence[Material]) -> Iterator[Contradiction]:
    """More things for each pair, group or child than the materials get out; ``named`` are those, row by row."""
    if not ({"each", "every"} & prose.words):
        return
    sentences = Sentences(prose)
    for match in _given(prose.text):
        rows = [row for row, material in enumerate(named) if _is_meant(material, match["things"].lower())]
        per = _PER[match["who"]]
        if len(rows) != 1 or prose.part_at(match.start()).year is not None:
            continue
        needed = session.materials[rows[0]]
        if needed.per == per and _worth(match["count"]) > needed.count and sentences.states(*match.span()):
            yield Contradiction(
                match.start(), match.group(), f"materials: {needed.item}, {needed.count} for each {per}"
            )


def _given(text: str) -> Iterator[re.Match[str]]:
    """What each has, or is given."""
    for word in ("ach ", "very "):
        at = text.find(word)
        while at >= 0:
            start = at - 1
            match = _EACH.match(text, start)
            if match and (match["verb"] or text[max(0, start - 5) : start].lower() == "give "):
                yield match
            at = text.find(word, at + 1)


def things_to_find(prose: Prose, home: AtHome, named: Sequence[Material]) -> Iterator[Contradiction]:
    """More things to find at home than its list of things has."""
    for match in _FETCH.finditer(prose.text):
        rows = [row for row, material in enumerate(named) if _is_meant(material, match["things"].lower())]
        if len(rows) == 1 and _worth(match["count"]) > home.things[rows[0]].count:
            thing = home.things[rows[0]]
            words = match.group().lstrip(".!? ")
            yield Contradiction(match.end() - len(words), words, f"things: {thing.item}, {thing.count}")


def _is_meant(material: Material, things: str) -> bool:
    """Whether words after a number name a material, in full or by its last word."""
    names = (material.name, material.plural, *material.also)
    first = things.split(maxsplit=1)[0]
    return any(things.startswith(name.lower()) for name in names) or first in {
        name.lower().split()[-1] for name in names
    }


def _worth(text: str) -> int:
    return int(text) if text.isdigit() else number_in_words(text.lower())
