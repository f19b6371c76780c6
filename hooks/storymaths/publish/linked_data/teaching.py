"""What pages teach, to whom and in how long, in schema.org's words."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from ...covers.taught import coverage_of
from ...model.document import Document
from ...model.session import Session
from ...render.site import Site
from .node import At, Node, ages, minutes
from .terms import objective_term, part_term, year_term

RESOURCE = "LearningResource"


def teaches(run: Iterable[Document[Session]], site: Site, at: At) -> list[Node]:
    """What some sessions teach as terms: objectives taught whole, and of others the parts, in the order written."""
    reference = site.collection.reference
    coverage = coverage_of(run, reference)
    found: list[Node] = []
    for key in coverage.taught:
        framework, objective = reference.frameworks.get(key[0]), reference.objectives.get(key)
        if framework is None or objective is None:
            continue
        if coverage.how(key) == "taught":
            found.append(objective_term(framework, objective, at))
        else:
            parts = objective.parts_named(tuple(coverage.parts[key]))
            found += [part_term(framework, objective, part, at) for part in parts]
    return found


def for_years(best: int, also: Sequence[int], site: Site, at: At) -> Node:
    """The year something is for, and the ages of that year and of those it serves as well."""
    limits = [site.collection.reference.years[year] for year in (best, *also)]
    return {"educationalLevel": year_term(best, at), "typicalAgeRange": ages(limits)}


def taught_in(run: Iterable[Document[Session]], site: Site, at: At) -> Node:
    """What some sessions teach together and how long they take; nothing where there are none."""
    sessions = list(run)
    if not sessions:
        return {}
    taught = teaches(sessions, site, at)
    return {"timeRequired": minutes(sum(page.fields.minutes for page in sessions))} | (
        {"teaches": taught} if taught else {}
    )
