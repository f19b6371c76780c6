"""Scenes for tests: characters with masses or any facts, in a year, within the project's own caps."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache
from pathlib import Path
from typing import Any

from storymaths.model.activity import CastMember, Context
from storymaths.model.book import FactAbout
from storymaths.model.reference import Reference
from storymaths.parse.reference import read_reference

ROOT = Path(__file__).resolve().parents[2]


@lru_cache(maxsize=1)
def the_reference() -> Reference:
    """The project's own reference data, read once."""
    return read_reference(ROOT)


def a_context(
    characters: Mapping[str, Mapping[str, Any]] | None = None,
    year: int = 2,
    facts: Mapping[str, FactAbout] | None = None,
    **masses: Any,
) -> Context:
    """A context with these characters and facts; ``otter=6`` stands for a character ``otter`` of mass 6."""
    cast: dict[str, Mapping[str, Any]] = dict(characters or {})
    cast.update({name: {"mass": mass} for name, mass in masses.items()})
    about = {"mass": FactAbout(means="mass", unit="")} if facts is None else dict(facts)
    reference = the_reference()
    return Context(
        characters=tuple(
            CastMember(id=id_, name=id_.replace("-", " "), plural=f"{id_}s", facts=dict(values))
            for id_, values in cast.items()
        ),
        facts=about,
        year=reference.years[year],
        caps=reference.limits.activity,
    )
