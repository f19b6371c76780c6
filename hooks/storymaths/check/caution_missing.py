"""Risks that the materials or the words of a page call for a note on, and that have none."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from ..model.collection import Collection
from ..model.problem import Place, Problem
from ..model.rule import Rule
from .things_used import Doing, applies, materials_of, notes_on, pages_of_doing, phrases_in

RULE = Rule(
    name="caution-missing",
    says="A page that uses something that can hurt carries a note on it.",
    why="An adult with ten minutes will not think of it unless the page does.",
    source="Each caution names its own source: site_data/cautions.yaml.",
    wrong="materials: [{item: scissors}] … cautions: []",
    right="materials: [{item: scissors}] … cautions: [{risk: scissors, note: Round-ended, counted out and in.}]",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each caution a page lacks, at the first thing that calls for it."""
    for page in pages_of_doing(collection):
        noted = notes_on(page)
        for risk, (place, reason) in _called_for(page, collection).items():
            if risk not in noted:
                caution = collection.reference.cautions[risk]
                yield RULE.problem(
                    place,
                    f'{reason}, and the page has no note on "{risk}" ({caution.name.lower()}).',
                    f"add to cautions: {{risk: {risk}, note: what the adult does about it}}.",
                )


def _called_for(page: Doing, collection: Collection) -> Mapping[str, tuple[Place, str]]:
    called: dict[str, tuple[Place, str]] = {}
    cautions = collection.reference.cautions
    for loc, material in materials_of(page, collection):
        for risk in material.hazards:
            if risk not in called and applies(cautions[risk], page):
                called[risk] = page.place(*loc), f"The page uses {material.plural}"
    noted = notes_on(page)
    for caution in cautions.values():
        if caution.id in called or caution.id in noted or not applies(caution, page):
            continue
        for offset, words in phrases_in(page, caution.trigger_words):
            called[caution.id] = page.place_in_prose(offset, words), f'The page says "{words}"'
            break
    return called
