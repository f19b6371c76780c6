"""What an activity has, in short marks such as ``chart read block`` or ``sequence step 10``, to tell what it practises."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from fractions import Fraction
from itertools import pairwise

from ..activities.chart.tasks import DrawChart, ReadChart
from ..activities.compare.tasks import CompareTask
from ..activities.kind import ActivityFields
from ..activities.money.money_fields import WithCoins
from ..activities.sequence.tasks import RowFields
from ..model.activity import Solution
from ..model.demands import Demands, Operation

_DOES = {"+": "adds", "−": "takes away", "×": "multiplies", "÷": "divides"}
_WITHIN = (10, 20, 100)


def marks_of(kind: str, fields: ActivityFields, solution: Solution) -> frozenset[str]:
    """Its kind, and all the marks of its task, of what it shows and of what is worked out in it."""
    return frozenset({kind, *_marks(kind, fields, solution), *_worked(solution.demands), *_gaps(solution)})


def _worked(demands: Demands) -> Iterator[str]:
    """What is worked out: with which signs, how far, across ten or not, and with how many digits."""
    yield from (_DOES[one.sign] for one in demands.operations)
    calculated = demands.calculated
    if calculated:
        yield from (f"to {most}" for most in _WITHIN if calculated[-1] <= most)
    for one in demands.operations:
        if one.sign in ("+", "−"):
            yield from _sizes(one)
    if sum(10 <= number < 100 for number in demands.numbers) > 2:
        yield "two-digit numbers"
    yield from (f"table {table}" for table in demands.tables)
    yield from (f"denominator {number.denominator}" for number in demands.numbers if number.denominator > 1)


def _sizes(one: Operation) -> Iterator[str]:
    """How the numbers of an addition or subtraction are made: the parts, whatever its sign."""
    if not one.numbers or any(number.denominator > 1 for number in one.numbers):
        return
    whole, *parts = sorted(one.numbers, reverse=True)
    if whole > 10 and all(part < 10 for part in parts):
        yield "across 10"
    if len(parts) > 2:
        yield "three numbers"
    large = [part for part in parts if part >= 10]
    if len(large) > 1 and whole < 1000:
        yield "two-digit"
    if len(parts) == 2 and len(large) > 0 and (len(large) == 1 or any(part % 10 == 0 for part in parts)):
        yield "tens or ones"
    if whole >= 100 and large:
        yield "three-digit"


def _gaps(solution: Solution) -> Iterator[str]:
    """Whether something stands open in a sum."""
    if any(line.gaps and any(sign in str(line) for sign in _DOES) for line in solution.task.lines):
        yield "gaps in sums"


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
