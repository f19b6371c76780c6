"""What pages teach, to whom and in how long, in schema.org's words."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from ...model.document import Document
from ...model.session import Session
from ...render.site import Site
from .node import At, Node, ages, minutes
from .terms import objective_term, year_term

RESOURCE = "LearningResource"


def teaches(codes: Mapping[str, Sequence[str]], site: Site, at: At) -> list[Node]:
    """The objectives among some codes as terms, each once, in the order written."""
    reference = site.collection.reference
    return [
        objective_term(reference.frameworks[framework], objective, at)
        for framework, listed in codes.items()
        for code in dict.fromkeys(listed)
        if (objective := reference.objectives.get((framework, code))) is not None
    ]


def for_years(best: int, also: Sequence[int], site: Site, at: At) -> Node:
    """The year something is for, and the ages of that year and of those it serves as well."""
    limits = [site.collection.reference.years[year] for year in (best, *also)]
    return {"educationalLevel": year_term(best, at), "typicalAgeRange": ages(limits)}


def taught_in(run: Iterable[Document[Session]], site: Site, at: At) -> Node:
    """What some sessions teach together and how long they take; nothing where there are none."""
    sessions, codes = list(run), dict[str, tuple[str, ...]]()
    if not sessions:
        return {}
    for session in sessions:
        for framework, listed in session.fields.objectives.items():
            codes[framework] = (*codes.get(framework, ()), *listed)
    taught = teaches(codes, site, at)
    return {"timeRequired": minutes(sum(page.fields.minutes for page in sessions))} | (
        {"teaches": taught} if taught else {}
    )
