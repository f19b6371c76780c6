"""Number sentences in the lists that are read as they are, by children too: the word bank and the ideas. Each is true."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from ..model.document import Fault, Loc, Locator
from ..model.reference import Reference
from .number_sentence import find_number_sentences, is_true


def faults_in_sums(reference: Reference, locators: Mapping[str, Locator]) -> Iterator[Fault]:
    """Each sentence that is untrue, at its words."""
    for file, loc, text in _texts(reference):
        for sentence in find_number_sentences(text):
            if not sentence.marked_wrong and is_true(sentence) is False:
                place = locators[file].place(loc, sentence.text, text[: sentence.start])
                yield Fault("mistyped", place, str(loc[2]), f"says {sentence.text}, which is not true")


def _texts(reference: Reference) -> Iterator[tuple[str, Loc, str]]:
    for index, word in enumerate(reference.words.values()):
        yield "words.yaml", ("words", index, "means"), word.means
        yield "words.yaml", ("words", index, "example"), word.example or ""
    for index, concept in enumerate(reference.concepts.values()):
        yield "concepts.yaml", ("concepts", index, "says"), concept.says
        for year, text in concept.grows.items():
            yield "concepts.yaml", ("concepts", index, "grows", year), text
