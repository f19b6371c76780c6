"""Things no page asks for, whatever notes it carries."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.problem import Problem
from ..model.rule import Rule
from .things_used import Phrases, applies, pages_of_doing

RULE = Rule(
    name="phrase-forbidden",
    says="No page asks for what no note can put right: filming children, copying pages of a book, calling a thing safe.",
    why="Some things are the school's or the law's to decide, not a lesson plan's.",
    source="Each caution names its own source, on the page Safety and care.",
    wrong="Photocopy the page for each child.",
    right="Draw your own picture of the page.",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each forbidden phrase."""
    cautions = collection.reference.cautions
    forbidden = Phrases((caution.id, phrase) for caution in cautions.values() for phrase in caution.forbidden_words)
    for page in pages_of_doing(collection):
        for risk, at, words in forbidden.said_on(page, everywhere=True):
            if applies(cautions[risk], page):
                why = cautions[risk].why
                yield RULE.problem(
                    page.place_in_prose(at, words),
                    f'A page does not say "{words}": {why[0].lower()}{why[1:].rstrip(".")}.',
                    "say it another way, or do something else.",
                )
