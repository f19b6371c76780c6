"""Which search answers which task with fractions."""

from __future__ import annotations

from ...model.activity import Context, Solution
from .answers import FractionAnswer
from .solve_amounts import find_parts, find_rest, find_whole
from .solve_line import find_on_line
from .solve_numbers import find_equal, find_order, rewrite_numbers
from .solve_sets import find_counts, find_groups, find_part_of_cast
from .solve_shapes import find_shaded
from .tasks import (
    EqualTask,
    FractionTask,
    GroupsTask,
    LineTask,
    OrderTask,
    PartTask,
    RestTask,
    SetTask,
    ShapeTask,
    ShareTask,
    WholeTask,
    WriteTask,
)


def solve(task: FractionTask, context: Context) -> Solution[FractionAnswer]:
    """Every answer, and what the task demands. Raises ``Unsolvable``."""
    match task:
        case PartTask():
            return find_parts(task, context)
        case RestTask():
            return find_rest(task, context)
        case WholeTask():
            return find_whole(task, context)
        case ShareTask():
            return find_counts(task, context)
        case SetTask():
            return find_part_of_cast(task, context)
        case GroupsTask():
            return find_groups(task, context)
        case ShapeTask():
            return find_shaded(task)
        case EqualTask():
            return find_equal(task, context)
        case OrderTask():
            return find_order(task, context)
        case LineTask():
            return find_on_line(task)
        case WriteTask():
            return rewrite_numbers(task)
