"""Pictures that say nothing to those who cannot see them."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.problem import Problem
from ..model.rule import Rule
from .html_found import tags_in, texts_of

RULE = Rule(
    name="picture-without-words",
    says="Every picture has words that do the same job.",
    why="A child who cannot see the picture is asked the same question about it.",
    source="WCAG 2.2, success criterion 1.1.1 Non-text content (level A).",
    wrong="![](scenes/page-3.svg)",
    right="![The lift hangs level: otter and mole on one side, heron on the other](scenes/page-3.svg)",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each picture without alternative text."""
    for book in collection.books.values():
        for index, character in enumerate(book.fields.cast):
            if character.picture and not character.alt:
                yield RULE.problem(
                    book.place("cast", index, "picture"),
                    f"The picture of {character.name} has no words for those who cannot see it.",
                    "add alt: with what it shows.",
                )
    for text in (text for page in collection.documents for text in texts_of(page)):
        shown = [(f"![{run.text}]", run.line) for run in text.content.pictures if not run.text.strip()]
        tags = [tag for tag in tags_in(text.content) if tag.name == "img" and not tag.attributes.get("alt", "").strip()]
        for written, line in (*shown, *((tag.written, tag.line) for tag in tags)):
            yield RULE.problem(
                text.place(line, written),
                "This picture has no words for those who cannot see it.",
                "write what it shows between the square brackets: ![what it shows](picture.svg)",
            )
