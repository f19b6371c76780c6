"""Things no page asks for, whatever notes it carries."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.problem import Problem
from ..model.rule import Rule
from .things_used import applies, pages_of_doing, phrases_in

RULE = Rule(
    name="phrase-forbidden",
    says="No page asks for what no note can put right: filming children, copying pages of a book, calling a thing safe.",
    why="Some things are the school's or the law's to decide, not a lesson plan's.",
    source="Each caution names its own source: site_data/cautions.yaml.",
    wrong="Photocopy the page for each child.",
    right="Draw your own picture of the page.",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each forbidden phrase."""
    for page in pages_of_doing(collection):
        for caution in collection.reference.cautions.values():
            if applies(caution, page):
                for offset, words in phrases_in(page, caution.forbidden_words, everywhere=True):
                    yield RULE.problem(
                        page.place_in_prose(offset, words),
                        f'A page does not say "{words}": {caution.why[0].lower()}{caution.why[1:].rstrip(".")}.',
                        "say it another way, or do something else.",
                    )
