"""Sessions that need what comes later, or themselves, or what is not there."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.problem import Problem
from ..model.rule import HOUSE_RULE, Rule
from ..model.session import Session

RULE = Rule(
    name="needs-forward",
    says="A session needs only earlier sessions of its book, so needs can never run in a circle.",
    why="Sessions are taught in order; one that needs a later one can never be taught.",
    source=HOUSE_RULE,
    wrong="number: 2 … needs: [3]",
    right="number: 3 … needs: [2]",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each need that is not an earlier session of the book."""
    unread_folders = {page.folder for page in collection.unread}
    for page in collection.of_kind(Session):
        session = page.fields
        numbers = {other.fields.number for other in collection.sessions_of(collection.run_of(page))}
        for index, need in enumerate(session.needs):
            if need >= session.number:
                yield RULE.problem(
                    page.place("needs", index),
                    f"Session {session.number} needs session {need}, which does not come before it.",
                    "take the need out, or change the order of the sessions.",
                )
            elif need not in numbers and page.folder not in unread_folders:
                yield RULE.problem(
                    page.place("needs", index),
                    f"Session {session.number} needs session {need}, which is not there.",
                    "write the number of an earlier session of this book.",
                )
