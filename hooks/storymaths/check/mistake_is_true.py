"""Mistakes made on purpose that are not mistakes."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.problem import Problem
from ..model.prose import PlacedText
from ..model.rule import HOUSE_RULE, Rule
from ..parse.number_sentence import find_number_sentences, is_true, marked_mistakes

RULE = Rule(
    name="mistake-is-true",
    says="What is marked as a mistake is a number sentence, and is untrue.",
    why="A teacher who asks what is wrong with a true sentence teaches that it is wrong.",
    source=HOUSE_RULE,
    wrong="[4 + 5 = 9]{wrong}",
    right="[4 + 5 = 8]{wrong}",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each ``[…]{wrong}`` that holds no sentence, or a true one."""
    for page in collection.documents:
        for text in page.placed_texts:
            yield from mistakes_that_are_none(text)


def mistakes_that_are_none(placed: PlacedText) -> Iterator[Problem]:
    """A problem for each ``[…]{wrong}`` of a text that holds no sentence, or a true one."""
    for words, start in marked_mistakes(placed.text):
        sentences = find_number_sentences(words)
        if not sentences:
            message = f'"{words}" is marked as a mistake, but is not a number sentence that can be worked out.'
        elif all(is_true(sentence) for sentence in sentences):
            message = f"{words} is marked as a mistake, but it is true."
        else:
            continue
        yield RULE.problem(placed.place(start, words), message, "take the mark off, or change it to a real mistake.")
