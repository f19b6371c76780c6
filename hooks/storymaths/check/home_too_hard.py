"""Home pages that take too much reading."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial
from operator import itemgetter
from textwrap import shorten

from ..model.any_book import AnyBook
from ..model.body import words_of_runs
from ..model.collection import Collection
from ..model.document import Document
from ..model.home import Home
from ..model.problem import Place, Problem
from ..model.rule import Rule
from ..parse.reading_level import count_words, reading_grade

RULE = Rule(
    name="home-too-hard",
    says="Each passage of a home page reads at or under the grade in site_data/limits.yaml, with a grade of slack.",
    why="A parent reads it with one eye on the pan.",
    source="Flesch–Kincaid grade: Kincaid and others, Research Branch Report 8-75 (US Navy, 1975). The limit is ours.",
    wrong="Subsequently endeavour to establish equivalence between the respective receptacles.",
    right="Now try to make both cups the same.",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for the hardest passage of each home page, a field, paragraph or step, where it is above the limit and its slack."""
    limits = collection.reference.limits
    for page in collection.at_home:
        graded = [
            (grade, words, place)
            for words, place in _passages(page)
            if count_words(words) >= limits.home_reading_words and (grade := reading_grade(words)) is not None
        ]
        grade, words, place = max(graded, key=itemgetter(0), default=(0.0, "", page.place))
        if grade > limits.home_reading_grade + limits.home_reading_slack:
            yield RULE.problem(
                place(),
                f'"{shorten(words, 60, placeholder=" …")}" reads at grade {grade:.1f}; the limit is '
                f"{limits.home_reading_grade:g} and {limits.home_reading_slack:g} of slack (Flesch–Kincaid).",
                "make its sentences shorter, and choose shorter words.",
            )


def _passages(page: Document[Home] | Document[AnyBook]) -> Iterator[tuple[str, Callable[[], Place]]]:
    """What a parent reads, passage by passage, each with a way to its place."""
    home = page.fields
    for field in ("summary", "say_first", "if_hard", "if_easy", "stop_when", "what_it_is_for"):
        yield page.raw[field], partial(page.place, field)
    if isinstance(home, AnyBook):
        yield home.look_for, partial(page.place, "look_for")
        yield home.expect, partial(page.place, "expect")
    for index, question in enumerate(home.ask):
        yield question.ask, partial(page.place, "ask", index, "ask")
        yield question.hear, partial(page.place, "ask", index, "hear")
    for index, note in enumerate(home.cautions):
        yield note.note, partial(page.place, "cautions", index, "note")
    for runs in page.content.lines:
        if runs:
            words = words_of_runs(runs)
            yield words, partial(page.place_on_line, runs[0].line, words[:20])
