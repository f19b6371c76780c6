"""Every name an author may write that is an entry of ``site_data/``, list by list."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

import yaml

from ...model.fields import Strict
from ...model.objective import Framework
from ...model.reference import Reference

_YEAR = re.compile(r"'(\d+)':")
"""A year as a key, which is a number."""


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
    own: str = ""
    """A file of the author's with an entry of her own, as YAML; empty where she is not to add to the list."""


def name_lists(reference: Reference) -> Iterator[NameList]:
    """Every list, the shortest kinds of name first."""
    items = "item: , models: [ ] and alone: [ ]"
    for name, title, goes_in, entries in (
        ("concepts", "Concepts", "concepts: [ ]", reference.concepts),
        ("themes", "Themes", "themes: [ ]", reference.themes),
        ("areas", "Areas where things are set out", "area:", reference.areas),
        ("materials", "Materials and things", items, reference.materials),
        ("cautions", "Cautions", "risk:", reference.cautions),
    ):
        listed = _listed(name, title, goes_in, ((one.id, one.name) for one in entries.values()))
        yield replace(listed, own=_own(name, entries.values()))
    words = reference.words.values()
    yield replace(
        _listed("words", "Words", "words:", ((one.word, one.means) for one in words)), own=_own("words", words)
    )
    for framework in reference.frameworks.values():
        goes_in = f"objectives: and {framework.id}: [ ]"
        yield _listed(framework.id, framework.short_name, goes_in, _codes(framework))


def _listed(name: str, title: str, goes_in: str, pairs: Iterable[tuple[str, str]]) -> NameList:
    return NameList(name, title, goes_in, tuple(Name(*pair) for pair in pairs))


def _own(name: str, entries: Iterable[Strict]) -> str:
    """A file with one entry, the shortest of the list: what an author writes to add one of her own."""
    said = [entry.model_dump(mode="json", by_alias=True, exclude_defaults=True) for entry in entries]
    shortest = min(said, key=lambda entry: len(str(entry)), default=None)
    text = str(yaml.safe_dump({name: [shortest]}, allow_unicode=True, sort_keys=False, width=100)) if shortest else ""
    return _YEAR.sub(r"\1:", text)


def _codes(framework: Framework) -> Iterator[tuple[str, str]]:
    for objective in framework.objectives:
        parts = ", ".join(part.id for part in objective.parts if part.asked)
        yield f"{objective.code}: [{parts}]" if parts else objective.code, objective.says
