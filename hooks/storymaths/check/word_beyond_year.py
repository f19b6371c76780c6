"""Words that belong to a later year than the session's."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.fields import year_name
from ..model.problem import Problem
from ..model.rule import Rule

RULE = Rule(
    name="word-beyond-year",
    says="The words of a session are of its year or an earlier one.",
    why="A word is taught in the year its idea is; before that it is only a noise.",
    source="Programmes of study, key stages 1 and 2 (DfE, 2013), where they name the word; else common practice.",
    wrong="year: 1 … words: {new: [denominator]}",
    right="year: 1 … words: {new: [half]}",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each word whose year is later than the page's."""
    for page in collection.documents:
        year = page.fields.best_year
        for _, loc, name in page.named("words"):
            word = collection.reference.words.get(name)
            if word and year is not None and word.year > year:
                yield RULE.problem(
                    page.place(*loc),
                    f'"{name}" is a word of {year_name(word.year)}; this is for {year_name(year)}.',
                    "choose a word of this year, or keep it for the bend to an older year.",
                )
