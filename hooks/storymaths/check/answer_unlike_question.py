"""An exit question whose answer does not have the number that it asks for."""

from __future__ import annotations

from collections.abc import Iterator

from ..claims.own_question import missed_answers
from ..model.collection import Collection
from ..model.problem import Problem
from ..model.rule import HOUSE_RULE, Rule
from ..model.session import Session

RULE = Rule(
    name="answer-unlike-question",
    says="The answer to an exit question has the number that the question comes to, where that can be worked out.",
    why="The question was changed, and the answer beside it was not.",
    source=HOUSE_RULE,
    wrong="ask: The bridge needs 52 planks, and there are 37. How many more? … answer: 14 more.",
    right="answer: 15 more.",
    since="0.2.0",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each exit question that comes to a number its answer does not have."""
    for page in collection.of_kind(Session):
        question = page.fields.exit_question
        for words, right in missed_answers(question.ask, question.answer):
            yield RULE.problem(
                page.place("exit_question", "answer"),
                f'The question comes to {right} ("{words}"), and the answer does not have it.',
                "put right the question or its answer.",
            )
