"""Pages on which words of the starter still stand."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.problem import Problem
from ..model.rule import HOUSE_RULE, Rule
from ..parse.starter_words import paragraphs, starter_words

RULE = Rule(
    name="starter-unfilled",
    says="What a new page begins with is replaced by the author's own words, unless the page is a draft.",
    why="“Write the very question to ask here?” in front of a class is no question.",
    source=HOUSE_RULE,
    wrong="answer: Write the answer.",
    right="answer: Badger and Worm.",
    since="0.2.0",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each field and each paragraph that says what the starter said."""
    proposed = frozenset(caution.still_to_write for caution in collection.reference.cautions.values())
    for page in collection.documents:
        unfilled = starter_words(page.fields.kind) if page.fields.status == "ready" else frozenset()
        if not unfilled:
            continue
        unfilled |= proposed
        places = [(text, page.place(*loc)) for loc, text in page.texts if text.strip() in unfilled]
        places += [(words, page.place_on_line(line)) for words, line in paragraphs(page.content) if words in unfilled]
        for words, place in places:
            yield RULE.problem(
                place,
                f"“{words.strip()}” is what a new page says; nothing has been written in its place.",
                "write it, take the line out if the page can do without, or add the line status: draft.",
            )
