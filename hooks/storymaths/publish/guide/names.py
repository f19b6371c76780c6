"""Every name an author may write that is an entry of ``site_data/``, list by list."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from ...model.objective import Framework
from ...model.reference import Reference


@dataclass(frozen=True, slots=True)
class Name:
    """What is written, and what it stands for."""

    write: str
    says: str


@dataclass(frozen=True, slots=True)
class NameList:
    """A list of names, and the field they are written in."""

    id: str
    title: str
    goes_in: str
    names: tuple[Name, ...]


def name_lists(reference: Reference) -> Iterator[NameList]:
    """Every list, the shortest kinds of name first."""
    concepts, themes = reference.concepts.values(), reference.themes.values()
    materials, cautions = reference.materials.values(), reference.cautions.values()
    yield _listed("concepts", "Concepts", "concepts: [ ]", ((one.id, one.name) for one in concepts))
    yield _listed("themes", "Themes", "themes: [ ]", ((one.id, one.name) for one in themes))
    yield _listed(
        "materials",
        "Materials and things",
        "item: , models: [ ] and alone: [ ]",
        ((one.id, one.name) for one in materials),
    )
    yield _listed("cautions", "Cautions", "risk:", ((one.id, one.name) for one in cautions))
    yield _listed("words", "Words", "words:", ((one.word, one.means) for one in reference.words.values()))
    for framework in reference.frameworks.values():
        goes_in = f"objectives: and {framework.id}: [ ]"
        yield _listed(framework.id, framework.short_name, goes_in, _codes(framework))


def _listed(name: str, title: str, goes_in: str, pairs: Iterable[tuple[str, str]]) -> NameList:
    return NameList(name, title, goes_in, tuple(Name(*pair) for pair in pairs))


def _codes(framework: Framework) -> Iterator[tuple[str, str]]:
    for objective in framework.objectives:
        parts = ", ".join(part.id for part in objective.parts if part.asked)
        yield f"{objective.code}: [{parts}]" if parts else objective.code, objective.says
