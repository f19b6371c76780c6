"""The question that a session ends on, held against its sheets: a sum that stands there has been worked out already."""

from __future__ import annotations

import re
from collections.abc import Iterator

from ..model.collection import Collection
from ..model.document import Document
from ..model.problem import Problem
from ..model.session import Session
from .on_pages import PageActivities, PageActivity
from .rules import EXIT_SHOWN

_SUM = re.compile(r"\d+(?: [+−×÷] \d+)*(?: = \d+(?: [+−×÷] \d+)*)+")


def check_exits(collection: Collection, pages: PageActivities) -> Iterator[Problem]:
    """A problem where the answer to the last question is a sum of the same session's activities."""
    for page in collection.of_kind(Session):
        asked = _sums_in(page.fields.exit_question.answer.partition("A child")[0])
        shown = {one for activity in pages[page.path] for one in _sums_of(activity)}
        for one in asked:
            if one in shown:
                yield _told(page, one)


def _told(page: Document[Session], found: str) -> Problem:
    message = f"The answer to the last question is {found}, which the children have worked out in this session already."
    return EXIT_SHOWN.problem(page.place("exit_question", "answer"), message, "ask it with other numbers.")


def _sums_of(activity: PageActivity) -> Iterator[str]:
    done = activity.worked.done
    for answer in done.solution.answers if done else ():
        yield from _sums_in(answer.says)


def _sums_in(text: str) -> Iterator[str]:
    """Each sum in a text, whichever side stands first: ``6 = 4 + 2`` is ``4 + 2 = 6``."""
    for found in _SUM.findall(text.replace("-", "−")):
        yield " = ".join(sorted(found.split(" = "), key=len, reverse=True))
