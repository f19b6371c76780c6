"""Which search answers which task with measures."""

from __future__ import annotations

from ...model.activity import Context, Solution
from .answers import MeasureAnswer
from .solve_choosing import choose_unit
from .solve_comparing import compare, convert, order
from .solve_perimeter import find_perimeter
from .solve_ratio import find_rate, share_in_ratio
from .solve_scale import read_scale
from .solve_totals import find_total
from .solve_units import count_units, find_volume
from .solve_weighing import level, reach
from .tasks import (
    ChooseUnit,
    CompareAmounts,
    ConvertAmounts,
    CountUnits,
    FindPerimeter,
    FindTotal,
    FindVolume,
    KeepInStep,
    LevelLoad,
    MeasureTask,
    OrderAmounts,
    ReachLoads,
    ReadScale,
    ShareInRatio,
)


def solve(task: MeasureTask, context: Context) -> Solution[MeasureAnswer]:
    """Every answer, and what the task demands."""
    match task:
        case CompareAmounts():
            return compare(task, context)
        case OrderAmounts():
            return order(task, context)
        case ConvertAmounts():
            return convert(task, context)
        case ReadScale():
            return read_scale(task, context)
        case CountUnits():
            return count_units(task, context)
        case LevelLoad():
            return level(task, context)
        case ReachLoads():
            return reach(task, context)
        case FindTotal():
            return find_total(task, context)
        case KeepInStep():
            return find_rate(task, context)
        case ShareInRatio():
            return share_in_ratio(task, context)
        case FindVolume():
            return find_volume(task, context)
        case ChooseUnit():
            return choose_unit(task, context)
        case FindPerimeter():
            return find_perimeter(task, context)
