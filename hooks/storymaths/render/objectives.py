"""Objectives as pages show them: our words, the official code, a link to what else teaches it, and which parts are meant."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from ..model.address import objective_page
from ..model.fields import Claim
from ..model.objective import Framework, Objective, Part
from ..model.reference import Reference


@dataclass(frozen=True, slots=True)
class ShownObjective:
    """An objective beside the framework it is of, and the source of its page."""

    framework: Framework
    objective: Objective
    source: str
    only: tuple[Part, ...]
    """The parts that are meant, where it is not the whole that is."""


def shown(claims: Mapping[str, Sequence[Claim]], reference: Reference) -> list[ShownObjective]:
    """The known objectives among ``claims``, by framework in the order written."""
    return [
        ShownObjective(reference.frameworks[framework], objective, objective_page(framework, claim.code), only)
        for framework, listed in claims.items()
        for claim in listed
        if (objective := reference.objectives.get((framework, claim.code))) is not None
        for only in [_only(objective, claim)]
    ]


def _only(objective: Objective, claim: Claim) -> tuple[Part, ...]:
    named = objective.parts_named(claim.parts) if objective.has_parts else ()
    return () if all(part in named for part in objective.parts if part.asked) else named
