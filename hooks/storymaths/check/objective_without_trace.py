"""Parts of objectives that a session claims to teach while none of their words or signs stands anywhere in it."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from ..model.collection import Collection
from ..model.document import Document
from ..model.objective import Part
from ..model.problem import Problem
from ..model.rule import HOUSE_RULE, Rule
from ..model.session import Session
from .codes_named import codes_named

RULE = Rule(
    name="objective-without-trace",
    says="What a session says it teaches leaves a trace in it: one of the words or signs that stand beside "
    "the part in the list of objectives.",
    why="Counting in threes is not taught where nobody says “threes”; a claim without a trace is a slip or a wish.",
    source=HOUSE_RULE,
    wrong="2N1: [tens, threes], in a session that counts in tens alone",
    right="2N1: [tens]",
    since="0.2.0",
)
_NOT_THE_LESSON = ("objectives", "revisits", "bends")
"""What is claimed, and what is another year's lesson."""


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each part whose words and signs occur nowhere in its session."""
    lessons: dict[str, str] = {}
    for named in codes_named(collection):
        objective = collection.reference.objectives.get((named.framework, named.code))
        if objective is None or named.role != "taught":
            continue
        if named.page.path not in lessons:
            lessons[named.page.path] = lesson_of(named.page)
        for part in _without_trace(objective.parts_named(named.parts), lessons[named.page.path]):
            yield RULE.problem(
                named.page.place(*named.loc, within=part.id if part.id in named.parts else ""),
                f"{named.code} is said to be taught, but of “{part.says}” nothing stands in the session: "
                f"none of {', '.join(part.trace)}.",
                f"take {part.id} out of the parts of {named.code}, or write the lesson that teaches it.",
            )


def _without_trace(parts: Sequence[Part], text: str) -> Iterator[Part]:
    for part in parts:
        if part.trace and not any(stands_in(text, sign) for sign in part.trace):
            yield part


def lesson_of(page: Document[Session]) -> str:
    """All that a session says of its own lesson, in plain small letters."""
    front = (text for loc, text in page.texts if loc[0] not in _NOT_THE_LESSON)
    return _plain("\n".join((*front, page.body)))


def _plain(text: str) -> str:
    return text.lower().replace("’", "'").replace("-", " ")


def stands_in(text: str, sign: str) -> bool:
    """Whether a word or phrase stands in a text by itself, or a sign anywhere."""
    return times_in(text, sign) > 0


def times_in(text: str, sign: str) -> int:
    """How often it does."""
    wanted = _plain(sign)
    if wanted not in text:
        return 0
    before, after = (r"(?<!\w)" if wanted[0].isalnum() else ""), (r"(?!\w)" if wanted[-1].isalnum() else "")
    return len(re.findall(before + re.escape(wanted) + after, text))
