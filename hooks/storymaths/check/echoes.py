"""Problems that only echo another: mending the one mends them, so the author is told of the one."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator
from posixpath import basename, dirname

from ..model.names import NO_CAST, NOT_WORKED_OUT
from ..model.problem import Problem

Reach = Callable[[Problem], tuple[str, int]]


def _line(problem: Problem) -> tuple[str, int]:
    return problem.place.path, problem.place.line


def _page(problem: Problem) -> tuple[str, int]:
    return problem.place.path, 0


def _book(problem: Problem) -> tuple[str, int]:
    """The pages of a book stand in one folder."""
    return dirname(problem.place.path), 0


_TURN_ON_THE_CAST = (
    "activity-cannot-be", "activity-fact-missing", "activity-claim-wrong", "activity-no-answer", "activity-too-many-answers",
    "activity-beyond-year", "activity-no-version", "ways-miscounted", "bend-activity-unknown", "bend-promise-broken",
    "version-same-numbers", "book-fact-untrue",
)  # fmt: skip
_COME_BEFORE = ("needs-forward", "symbol-not-introduced", "word-not-taught", "apparatus-not-modelled")
_ECHOES: tuple[tuple[str, Reach, tuple[str, ...]], ...] = (
    ("cast-twice", _book, _TURN_ON_THE_CAST),
    ("cast-fact-unlike", _book, _TURN_ON_THE_CAST),
    ("book-unknown", _book, ("session-number-gap",)),
    ("session-number-gap", _book, _COME_BEFORE),
    ("caution-unknown", _page, ("caution-missing", "small-parts-unnoted", "allergen-unnoted")),
    ("page-outside-book", _page, ("stop-outside-reading", "lesson-contradicted")),
    ("stop-outside-reading", _page, ("lesson-contradicted",)),
    ("story-pages-differ", _line, ("lesson-contradicted",)),
)
"""A rule, how far its breach is heard, and the rules whose breaches echo it there."""
_OF_PAGES = ("page-outside-book", "lesson-contradicted", "stop-outside-reading", "story-pages-differ")


def without_echoes(problems: Collection[Problem]) -> set[Problem]:
    """The problems without those that follow from another of them."""
    return {*problems} - {*_echoes(problems)} - {*_of_a_short_book(problems)} - {*_of_a_book_unread(problems)}


def _echoes(problems: Collection[Problem]) -> Iterator[Problem]:
    for cause, reach, echoes in _ECHOES:
        heard = {reach(problem) for problem in problems if problem.rule == cause}
        if heard:
            yield from (problem for problem in problems if problem.rule in echoes and reach(problem) in heard)


def _of_a_short_book(problems: Collection[Problem]) -> Iterator[Problem]:
    """What is said of pages where a book's own record names pages past its end: all but the first of these."""
    own = [p for p in problems if p.rule == "page-outside-book" and basename(p.place.path) == "index.md"]
    for folder in {_book(problem) for problem in own}:
        first = min(problem for problem in own if _book(problem) == folder)
        yield from (p for p in problems if p.rule in _OF_PAGES and _book(p) == folder and p != first)


def _of_a_book_unread(problems: Collection[Problem]) -> Iterator[Problem]:
    """What is said of names in a text where the record of their book, or the activity, is told of by itself."""
    without_cast = {problem.place.path for problem in problems if problem.message == NO_CAST}
    unread = {_book(problem) for problem in problems if problem.message == NO_CAST}
    records = [p for p in problems if p.rule == "book-unknown" or basename(p.place.path) == "index.md"]
    told = {_book(problem) for problem in records if problem.place.path.startswith("content/books/")}
    unsolved = {_book(problem) for problem in problems if problem.rule.startswith("activity-")}
    for problem in problems:
        names_facts = problem.place.path in without_cast or "[[" in problem.message
        follows = names_facts and problem not in records
        if (follows and _book(problem) in told & unread) or (
            problem.message.endswith(NOT_WORKED_OUT) and _book(problem) in told | unsolved
        ):
            yield problem
