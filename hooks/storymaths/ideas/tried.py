"""A candidate worked out and found good for its year, with what it practises."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from ..activities.fit import fits, too_early
from ..activities.kind import ActivityFields
from ..activities.work_out import WorkedOut, work_out
from ..covers.marks import marks_of
from ..covers.practised import practised_in
from ..model.activity import Solution
from ..model.demands import Demands
from ..model.reference import Reference
from .candidate import Candidate
from .idea import Practises
from .material import Material

_FEW, _MOST_LISTED = range(2, 7), 8


@dataclass(frozen=True, slots=True)
class Tried:
    """A candidate that comes out."""

    candidate: Candidate
    block: str
    fields: ActivityFields
    solution: Solution
    marks: frozenset[str]
    practises: tuple[Practises, ...]
    concepts: tuple[str, ...]

    @property
    def kind(self) -> str:
        """The name of its kind."""
        return self.fields.kind

    @property
    def task(self) -> str:
        """The name of its task."""
        return self.fields.task_name

    @property
    def alike(self) -> tuple[object, ...]:
        """Equal for two that set a child the same work."""
        return same_work(self.fields, self.solution)


def same_work(fields: ActivityFields, solution: Solution) -> tuple[object, ...]:
    """Equal for two activities that set a child the same work, in whatever words."""
    said = tuple(answer.says for answer in solution.answers)
    return fields.kind, fields.task_name, solution.demands.numbers, said


def try_candidate(candidate: Candidate, material: Material, year: int, reference: Reference) -> Tried | None:
    """The candidate worked out as its block is read; None where anything is wrong with it, or where it has too many answers."""
    block = candidate.block
    worked = work_out(block, "", 1, material.book, year, reference, folder=material.folder)
    done = worked.done
    if done is None or worked.problems:
        return None
    fields: ActivityFields = done.fields
    if _is_of_long_before(fields, done.solution.demands, year, reference):
        return None
    answers = len(done.solution.answers)
    if not (answers in _FEW if candidate.finds or candidate.lists else 0 < answers <= _MOST_LISTED):
        return None
    found = {"every way"} if candidate.finds else set[str]()
    marks = marks_of(fields.kind, fields, done.solution) | candidate.marks | found
    practises = tuple(_practised(worked, marks, year, reference))
    concepts = tuple(
        concept.id
        for concept in reference.concepts.values()
        if year in concept.grows and reference.practised_by.is_of(concept.id, marks)
    )
    return Tried(candidate, block, fields, done.solution, marks, practises, concepts) if practises else None


def _is_of_long_before(fields: ActivityFields, demands: Demands, year: int, reference: Reference) -> bool:
    """Whether children could do it two years earlier, sums and all: it practises nothing of this year."""
    before = reference.years.get(year - 2)
    return (
        before is not None
        and before.knows("=")
        and not too_early(fields, before, reference)
        and fits(demands, before, reference)
    )


def _practised(worked: WorkedOut, marks: frozenset[str], year: int, reference: Reference) -> Iterator[Practises]:
    """The objectives of the year, framework by framework, that it practises."""
    surely = {(one.framework, one.objective.code): one.parts for one in practised_in(worked, reference)}
    for framework in reference.frameworks:
        for objective in reference.objectives_of.get((framework, year), ()):
            key = (framework, objective.code)
            if key in surely or reference.practised_by.practises(key, marks):
                parts = tuple(part.id for part in surely.get(key, ()))
                yield Practises(framework, objective.code, objective.says, parts)
