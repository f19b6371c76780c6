"""Sessions and home activities whose numbers skip or repeat."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from ..model.collection import Collection
from ..model.document import Document
from ..model.home import Home
from ..model.problem import Problem
from ..model.rule import HOUSE_RULE, Rule
from ..model.session import Session

RULE = Rule(
    name="session-number-gap",
    says="The sessions of a book are numbered 1, 2, 3 … without a gap or a repeat, and so are its home activities.",
    why="A missing number looks like a missing lesson; a repeated one hides which comes first.",
    source=HOUSE_RULE,
    wrong="sessions 1, 2 and 4",
    right="sessions 1, 2 and 3",
)

_AGAIN = "There is already"


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each number that comes twice or leaves a gap before it."""
    unread = Counter(page.folder for page in collection.unread)
    for book in sorted(collection.book_ids):
        for run in (collection.sessions_of(book), collection.homes_of(book)):
            # A page that could not be read may hold the number that seems to be missing.
            if run and not unread[run[0].folder]:
                problems = list(_gaps(run))
                # Where a number comes twice, another seems to be missing: the two have one cause.
                yield from [problem for problem in problems if _AGAIN in problem.message] or problems


def _gaps(run: tuple[Document[Session], ...] | tuple[Document[Home], ...]) -> Iterator[Problem]:
    expected, what = 1, "session" if isinstance(run[0].fields, Session) else "home activity"
    for page in run:
        number = page.fields.number
        if number < expected:
            yield RULE.problem(page.place("number"), f"{_AGAIN} a {what} {number} of this book.", "number it afresh.")
        elif number > expected:
            yield RULE.problem(
                page.place("number"),
                f"{what.capitalize()} {number} comes after {what} {expected - 1}: {what} {expected} is missing."
                if expected > 1
                else f"The first {what} is number {number}.",
                f"write number: {expected}, or add the {what} that is missing.",
            )
        expected = max(expected, number + 1)
