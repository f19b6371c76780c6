"""Which parts of objectives an activity practises, as far as its own data surely tells.

What an activity has is said in short marks, such as ``chart read block`` or ``sequence step 10``; a part of an objective
lists the marks that practise it, in ``site_data/curricula``.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from ..activities.chart.tasks import DrawChart, ReadChart
from ..activities.compare.tasks import CompareTask
from ..activities.kind import ActivityFields
from ..activities.money.money_fields import WithCoins
from ..activities.sequence.tasks import RowFields
from ..activities.work_out import WorkedOut
from ..model.activity import Solution
from ..model.objective import Objective, Part
from ..model.reference import Reference


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
    marks = frozenset(_marks(worked.kind.name, worked.fields, worked.solution))
    return [
        Practised(framework, objective, parts)
        for framework in reference.frameworks
        for objective in reference.objectives_of.get((framework, worked.year), ())
        if (parts := tuple(part for part in objective.parts if marks.intersection(part.practised_by)))
    ]


def _marks(kind: str, fields: ActivityFields, solution: Solution) -> Iterator[str]:
    """Its kind with its task, with each sign it shows, and with the finest time that is read; charts, steps, coins."""
    yield f"{kind} {fields.task_name}"
    shown = "".join(str(line) for line in solution.task.lines)
    offered = fields.signs if isinstance(fields, CompareTask) else ()
    # A sum turned round to find what is missing has a sign that no child need read.
    yield from (f"{kind} {sign}" for sign in solution.demands.signs if sign in shown or sign in offered)
    if solution.demands.clock is not None:
        yield f"{kind} {fields.task_name} {solution.demands.clock}"
    if isinstance(fields, (ReadChart, DrawChart)):
        yield f"chart {fields.task_name} {fields.show}"
    if isinstance(fields, RowFields) and fields.rule == "step":
        yield from _steps(fields)
    if isinstance(fields, WithCoins):
        yield from (f"coin {pence}" for pence in (*fields.coins, *fields.purse))


def _steps(row: RowFields) -> Iterator[str]:
    """The step of a row, and whether nought is on it: in a row with a mistake, the step found most often."""
    known = list(row.known.items())
    found = Counter[Fraction](
        (term - before) / (place - earlier) for (earlier, before), (place, term) in pairwise(known)
    )
    step = Fraction(row.step) if row.step is not None else found.most_common(1)[0][0] if found else None
    if step:
        yield f"sequence step {step}"
        if known[0][1] % step == 0:
            yield f"sequence step {step} from 0"
