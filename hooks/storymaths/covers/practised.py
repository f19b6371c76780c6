"""Which parts of objectives an activity practises, as far as its own data surely tells.

A part of an objective lists the marks of an activity that practise it, in ``site_data/curricula``.
"""

from __future__ import annotations

from dataclasses import dataclass

from ..activities.work_out import WorkedOut
from ..model.objective import Objective, Part
from ..model.reference import Reference
from .marks import marks_of


@dataclass(frozen=True, slots=True)
class Practised:
    """Parts of one objective."""

    framework: str
    objective: Objective
    parts: tuple[Part, ...]


def practised_in(worked: WorkedOut, reference: Reference) -> list[Practised]:
    """The parts that an activity practises of its own year's objectives, framework by framework."""
    if worked.kind is None or worked.fields is None or worked.solution is None or worked.year is None:
        return []
    marks = marks_of(worked.kind.name, worked.fields, worked.solution)
    return [
        Practised(framework, objective, parts)
        for framework in reference.frameworks
        for objective in reference.objectives_of.get((framework, worked.year), ())
        if (parts := tuple(part for part in objective.parts if marks.intersection(part.practised_by)))
    ]
