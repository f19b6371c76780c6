"""Number sentences in the prose that do not hold."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.problem import Problem
from ..model.rule import HOUSE_RULE, Rule
from ..parse.number_sentence import find_number_sentences, is_true

RULE = Rule(
    name="number-sentence-untrue",
    says="Every number sentence on a page is true, or is marked as a mistake to talk about.",
    why="A wrong sum on a plan is copied on to thirty whiteboards.",
    source=HOUSE_RULE + " Worked out exactly, by the order of operations.",
    wrong="So 6 + 1 = 4 + 4.",
    right="So 6 + 1 = 4 + 3. Or, on purpose: [6 + 1 = 4 + 4]{wrong}",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each sentence, on any kind of page, that is untrue and not marked so."""
    for page in collection.documents:
        for sentence in find_number_sentences(page.prose.text):
            if not sentence.marked_wrong and is_true(sentence) is False:
                left = f" with {sentence.left_over} left over" if sentence.left_over is not None else ""
                yield RULE.problem(
                    page.place_in_prose(sentence.start, sentence.text),
                    f"{sentence.text}{left} is not true.",
                    f"correct it, or mark a mistake made on purpose: [{sentence.text}]{{wrong}}",
                )
