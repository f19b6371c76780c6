"""What a task of sharing is given: how many things, who shares them, and the piles it asks about."""

from __future__ import annotations

from collections.abc import Iterable
from typing import NoReturn

from ...model.activity import CastMember, Context
from ..kind import Unsolvable, whole_fact
from ..saying import written
from .tasks import CastPilesTask, EachTask, GroupsTask, PartsTask, PilesTask, ShareTask, TotalTask, WaysTask

OwnedPile = tuple[int, CastMember | None]
"""A pile, and whose it is, where it is somebody's."""


def total_of(task: EachTask | GroupsTask | PartsTask | WaysTask, context: Context) -> int:
    """How many things are shared. Raises ``Unsolvable``."""
    total = task.total
    if isinstance(total, int):
        if not 1 <= total <= context.caps.number:
            message = f"{written(total)} is not a number of things that can be shared here."
            raise Unsolvable(("total",), message, f"write a whole number from 1 to {context.caps.number:,}.")
        return total
    if task.fact is None:
        message = f'The total is "{total}", and no fact gives its number.'
        raise Unsolvable(("total",), message, "write a number, or add fact.", "activity-fact-missing")
    values = whole_fact(context, task.fact)
    if total not in values:
        _refuse_stranger(total, values, ("total",))
    return values[total]


def receivers_of(task: ShareTask, context: Context) -> tuple[CastMember, ...]:
    """The characters who get a share each; none where things go into groups. Raises ``Unsolvable``."""
    match task:
        case EachTask() | TotalTask():
            return context.characters if task.fact is None else ()
        case PartsTask():
            known = {character.id: character for character in context.characters}
            for id_ in task.parts:
                if id_ not in known:
                    _refuse_stranger(id_, known, ("parts", id_))
            return tuple(known[id_] for id_ in task.parts)
        case _:
            return ()


def groups_of(task: EachTask | TotalTask, context: Context) -> int:
    """Among how many it is shared. Raises ``Unsolvable``."""
    receivers = len(receivers_of(task, context))
    if receivers and task.among not in (None, receivers):
        message = f"It is shared among {task.among}, and there are {receivers} in the cast."
        raise Unsolvable(("among",), message, "leave out among, or change the cast.")
    groups = receivers or task.among
    if groups is None:
        message = "Among how many it is shared is not given."
        raise Unsolvable(("among",), message, "write a whole number after among.", "activity-broken")
    return groups


def piles_of(task: PilesTask | CastPilesTask, context: Context) -> tuple[OwnedPile, ...]:
    """Every pile that is asked about. Raises ``Unsolvable``."""
    if isinstance(task, CastPilesTask):
        values = whole_fact(context, task.fact)
        if not values:
            message = "There is nobody in the cast."
            raise Unsolvable(("cast",), message, "name some characters.", "activity-fact-missing")
        return tuple((values[character.id], character) for character in context.characters)
    if task.fact is not None:
        message = "There are piles, and a fact of the cast that gives piles too."
        raise Unsolvable(("piles",), message, "leave out one of them.", "activity-broken")
    return tuple((pile, None) for pile in task.piles)


def _refuse_stranger(id_: str, known: Iterable[str], loc: tuple[str, ...]) -> NoReturn:
    fix = f"use one of {', '.join(known)}." if known else "add it to the cast."
    raise Unsolvable(loc, f'"{id_}" is not in the cast.', fix, "activity-fact-missing")
