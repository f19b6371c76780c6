"""What a task of bonds is given: the whole, whose the parts are, and what the missing parts may be."""

from __future__ import annotations

from ...model.activity import CastMember, Context
from ...model.demands import Operation, operation
from ...model.year import YearLimits
from ..kind import Unsolvable, whole_fact
from .split import Split
from .tasks import Bond, BondsTask, CastTask, MissingTask, SplitTask, WholeTask

_MOST_PARTS = 5


def whole_of(task: BondsTask, context: Context) -> int:
    """The whole, given or made by the known parts. Raises ``Unsolvable``."""
    if isinstance(task, WholeTask):
        whole = sum(task.known)
        if whole > context.caps.number:
            message = f"The parts make more than {context.caps.number:,}."
            raise Unsolvable(("known",), message, "use smaller parts.")
        return whole
    if not isinstance(task, CastTask):
        return task.whole
    if isinstance(task.whole, int):
        return task.whole
    values = whole_fact(context, task.fact)
    if task.whole not in values:
        message, fix = f'"{task.whole}" is not in the cast.', f"use one of {', '.join(values)}."
        raise Unsolvable(("whole",), message, fix, "activity-fact-missing")
    return values[task.whole]


def pickers_of(task: BondsTask, context: Context) -> tuple[CastMember, ...]:
    """Those whose numbers may be the parts; nobody where the parts are not numbers of the cast."""
    if not isinstance(task, CastTask):
        return ()
    return tuple(character for character in context.characters if character.id != task.whole)


def holders_of(task: BondsTask, context: Context) -> tuple[CastMember, ...]:
    """Those who hold a part each, the known parts first. Raises ``Unsolvable`` where parts and cast do not match."""
    holders = () if isinstance(task, CastTask) else context.characters
    if isinstance(task, WholeTask) and len(holders) not in (0, len(task.known)):
        message = f"{len(task.known)} parts are known for {len(holders)} of the cast to hold."
        raise Unsolvable(("known",), message, "give each of the cast one part, or leave out the cast.")
    if len(holders) == 1 or len(holders) > _MOST_PARTS:
        message = f"{len(holders)} of the cast cannot share a whole here."
        raise Unsolvable(("cast",), message, "name from two to five characters, or none.")
    return holders


def known_of(task: BondsTask) -> tuple[int, ...]:
    """The parts that are known."""
    return task.known if isinstance(task, (WholeTask, MissingTask)) else ()


def count_parts(task: BondsTask, context: Context) -> int:
    """How many parts there are. Raises ``Unsolvable``."""
    if isinstance(task, WholeTask):
        return len(task.known)
    return len(holders_of(task, context)) or task.parts


def count_missing(task: BondsTask, context: Context) -> int:
    """How many parts are to be found. Raises ``Unsolvable``."""
    return count_parts(task, context) - len(known_of(task))


def split_of(task: SplitTask | MissingTask, context: Context) -> Split:
    """What the missing parts may be. Raises ``Unsolvable``."""
    known, parts = known_of(task), count_parts(task, context)
    if len(known) >= parts:
        message = f"{len(known)} parts are known, and there can be at most {parts - 1} here."
        raise Unsolvable(("known",), message, "leave a part out, or ask for more parts.")
    if sum(known) > task.whole:
        message = f"The parts known make {sum(known):,}, more than the whole of {task.whole:,}."
        raise Unsolvable(("known",), message, "make the whole larger, or a part smaller.")
    if task.different and len(set(known)) < len(known):
        raise Unsolvable(("known",), "Two of the known parts are the same.", "leave out different, or change one.")
    largest = task.whole if task.largest is None else min(task.largest, task.whole)
    return Split(parts - len(known), task.smallest, largest, task.step, task.different)


def order_counts(task: BondsTask, context: Context) -> bool:
    """Whether the same parts in another order are another way."""
    if isinstance(task, (SplitTask, MissingTask)):
        return task.order == "counts" or bool(holders_of(task, context))
    return False


def find_step(task: BondsTask, bond: Bond, year: YearLimits) -> Operation:
    """How a bond is calculated: taken away where one part is missing and the year knows −, else added."""
    if isinstance(task, MissingTask) and len(bond.parts) == len(task.known) + 1 and year.knows("−"):
        return operation("−", bond.whole, *bond.parts)
    return operation("+", *bond.parts, bond.whole)
