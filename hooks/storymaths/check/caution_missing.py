"""Risks that the materials or the words of a page call for a note on, and that have none."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from ..model.collection import Collection
from ..model.material import Caution
from ..model.once_for import once_for
from ..model.problem import Place, Problem
from ..model.reference import Reference
from ..model.rule import Rule
from .things_in_prose import ThingsInProse
from .things_used import Doing, Phrases, applies, materials_of, notes_on, pages_of_doing, sentence_at

RULE = Rule(
    name="caution-missing",
    says="A page that uses something that can hurt carries a note on it.",
    why="An adult with ten minutes will not think of it unless the page does.",
    source="Each caution names its own source, on the page Safety and care.",
    wrong="materials: [{item: scissors}] … cautions: []",
    right='materials: [{item: scissors}] … cautions: [{risk: scissors, note: "Round-ended, counted out and in."}]',
)


_OF_THE_STORY = "; or, if nobody touches it, say so once on the page: … is only in the story"


@dataclass(frozen=True, slots=True)
class Called:
    """A caution that a page calls for: where, why, and whether its words alone do."""

    place: Place
    reason: str
    caution: Caution
    in_words: bool = False


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each caution a page lacks, at the first thing that calls for it."""
    triggers, named = triggers_of(collection.reference), ThingsInProse(collection.reference)
    for page in pages_of_doing(collection):
        for called in cautions_called(page, collection, triggers, named):
            yield _problem(called)


@once_for
def triggers_of(reference: Reference) -> Phrases:
    """What finds the words that call for a caution."""
    spoken = ((caution.id, word) for caution in reference.cautions.values() for word in caution.trigger_words)
    return Phrases(spoken, reference.prose.handling)


def cautions_called(page: Doing, collection: Collection, triggers: Phrases, named: ThingsInProse) -> Iterator[Called]:
    """Each caution that a page calls for and has no note on, with the first thing that calls for it, and where."""
    cautions, settled = collection.reference.cautions, set(notes_on(page))
    for loc, material in materials_of(page, collection):
        for risk in material.hazards:
            if risk not in settled and applies(cautions[risk], page):
                settled.add(risk)
                yield Called(page.place(*loc), f"The page uses {material.plural}", cautions[risk])
    handled = ((risk, each) for each in named.handled_on(page) for risk in each.thing.hazards)
    said = ((risk, each.start, each.words) for risk, each in handled)
    for risk, at, words in (*triggers.said_on(page), *said):
        others = cautions[risk].not_beside
        if others and any(other in sentence_at(page.prose.lowered, at) for other in others):
            continue
        if risk not in settled and applies(cautions[risk], page):
            settled.add(risk)
            yield Called(page.place_in_prose(at, words), f'The page says "{words}"', cautions[risk], in_words=True)


def _problem(called: Called) -> Problem:
    caution = called.caution
    return RULE.problem(
        called.place,
        f'{called.reason}, and the page has no note on "{caution.id}" ({caution.name.lower()}).',
        f"{caution.how_to_note}{_OF_THE_STORY if called.in_words else ''}.",
    )
