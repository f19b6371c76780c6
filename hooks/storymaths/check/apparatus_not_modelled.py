"""Apparatus children use alone before anybody has shown them how."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.problem import Problem
from ..model.rule import COMMON_PRACTICE, Rule

RULE = Rule(
    name="apparatus-not-modelled",
    says="Apparatus used alone has been modelled by an adult in an earlier step or session.",
    why="Thirty children and a balance nobody has shown them is thirty games, not one lesson.",
    source=COMMON_PRACTICE,
    wrong="steps: [{name: Try it, alone: [bucket-balance]}]",
    right="steps: [{name: Watch, models: [bucket-balance]}, {name: Try it, alone: [bucket-balance]}]",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each thing used alone that no step so far has modelled."""
    materials = collection.reference.materials
    unread_folders = {page.folder for page in collection.unread}
    for book in sorted(collection.book_ids):
        modelled: set[str] = set()
        for page in collection.sessions_of(book):
            if page.folder in unread_folders:
                break  # a page that could not be read may be what models it
            for row, step in enumerate(page.fields.steps):
                for index, item in enumerate(step.alone):
                    material = materials.get(item)
                    if material and material.apparatus and item not in modelled:
                        yield RULE.problem(
                            page.place("steps", row, "alone", index),
                            f"The children use a {material.name} alone; no step so far has modelled it.",
                            f"add models: [{item}] to an earlier step, and say in its section what the adult shows.",
                        )
                modelled.update(step.models)
