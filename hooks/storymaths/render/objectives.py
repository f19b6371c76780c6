"""Objectives as pages show them: our words, the official code, and a link to what else teaches it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from ..model.address import objective_page
from ..model.objective import Framework, Objective
from ..model.reference import Reference


@dataclass(frozen=True, slots=True)
class ShownObjective:
    """An objective beside the framework it is of, and the source of its page."""

    framework: Framework
    objective: Objective
    source: str


def shown(codes: Mapping[str, Sequence[str]], reference: Reference) -> list[ShownObjective]:
    """The known objectives among ``codes``, by framework in the order written."""
    return [
        ShownObjective(reference.frameworks[framework], objective, objective_page(framework, code))
        for framework, listed in codes.items()
        for code in listed
        if (objective := reference.objectives.get((framework, code))) is not None
    ]
