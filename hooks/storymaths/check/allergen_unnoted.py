"""Food, and things made from food, used without an allergy note."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.problem import Problem
from ..model.rule import Rule
from .things_in_prose import ThingsInProse
from .things_used import materials_of, notes_on, pages_of_doing

RULE = Rule(
    name="allergen-unnoted",
    says="A page that uses food, or a thing that holds one of the fourteen allergens, carries an allergy note.",
    why="A child may react to food that is only handled, and to foods outside the fourteen.",
    source="Annex II to Regulation (EU) No 1169/2011 (the fourteen); the allergens of each thing stand with it in the list of things.",
    wrong="materials: [{item: bread-slice}] … cautions: []",
    right="materials: [{item: bread-slice}] … cautions: [{risk: allergens, note: …}]",
)
CAUTION = "allergens"
_SUCH_AS = "whose plans to check, and what to use instead"


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for the first food or allergen of each page without the note."""
    named = ThingsInProse(collection.reference)
    fix = f"{collection.reference.cautions[CAUTION].how_to_note}: {_SUCH_AS}."
    for page in pages_of_doing(collection):
        if CAUTION in notes_on(page):
            continue
        for loc, material in materials_of(page, collection):
            if material.food or material.allergens:
                holds = ", ".join(material.allergens) or "none of the fourteen, but it is food"
                yield RULE.problem(
                    page.place(*loc),
                    f"The page uses {material.plural} (allergens: {holds}) and has no allergy note.",
                    fix,
                )
                break
        else:
            for handled in named.handled_on(page):
                if handled.thing.food or handled.thing.allergens:
                    holds = ", ".join(handled.thing.allergens) or "none of the fourteen, but it is food"
                    yield RULE.problem(
                        page.place_in_prose(handled.start, handled.words),
                        f'The page says "{handled.words}" (allergens: {holds}) and has no allergy note.',
                        fix,
                    )
                    break
