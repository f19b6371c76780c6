"""Number sentences in the prose that do not hold."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.problem import Problem
from ..model.prose import PlacedText
from ..model.rule import HOUSE_RULE, Rule
from ..parse.number_sentence import NumberSentence, find_number_sentences, is_true

RULE = Rule(
    name="number-sentence-untrue",
    says="Every number sentence on a page is true, or is marked as a mistake to talk about.",
    why="A wrong sum on a plan is copied on to thirty whiteboards.",
    source=HOUSE_RULE + " Worked out exactly, by the order of operations.",
    wrong="So 6 + 1 = 4 + 4.",
    right="So 6 + 1 = 4 + 3. Or, on purpose: [6 + 1 = 4 + 4]{wrong}",
)
_KEYS = {"-": "−", "–": "−", "x": "×", "*": "×", "/": "÷", ":": "÷"}


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each sentence, on any kind of page, that is untrue and not marked so."""
    for page in collection.documents:
        for text in page.placed_texts:
            yield from untruths(text)


def untruths(placed: PlacedText) -> Iterator[Problem]:
    """A problem for each sentence of a text that is untrue and not marked so."""
    for sentence in find_number_sentences(placed.text):
        if not sentence.marked_wrong and is_true(sentence) is False:
            left = f" with {sentence.left_over} left over" if sentence.left_over is not None else ""
            why = f": {sentence.verdict.why}" if sentence.verdict.why else ""
            yield RULE.problem(
                placed.place(sentence.start, sentence.text),
                f"{sentence.text}{left} is not true{why}.",
                f"correct it, or mark a mistake made on purpose: [{sentence.text}]{{wrong}}{_typing(sentence)}",
            )


def _typing(sentence: NumberSentence) -> str:
    """Which sign to type where another key was pressed for it."""
    keys = {token.typed: _KEYS[token.typed] for token in sentence.tokens if token.typed in _KEYS}
    return "".join(f'; if "{key}" is meant as {sign}, type {sign}' for key, sign in keys.items())
