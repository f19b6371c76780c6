"""One kind with several things to find: each says which fields it needs, and no other may be there unused."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from functools import cache
from typing import Generic, TypeVar

from ..model.activity import Context, Solution
from .kind import ActivityFields, Unsolvable

F = TypeVar("F", bound=ActivityFields)


@dataclass(frozen=True, slots=True)
class Finding(Generic[F]):
    """What may be asked for with ``find``."""

    solve: Callable[[F, Context], Solution]
    needs: tuple[str, ...] = ()
    """Fields it cannot do without: ``a|b`` asks for one of them or more, ``a^b`` for one only.

    ``fact`` stands for a cast and its fact.
    """
    may: tuple[str, ...] = ()


def found(fields: F, find: str, findings: Mapping[str, Finding[F]], context: Context) -> Solution:
    """The solution of what ``find`` asks for. Raises ``Unsolvable`` for a field missing or without a part in it."""
    finding = findings[find]
    given = [name for name in (*own_fields(type(fields)), "fact") if _stated(fields, name)]
    for need in finding.needs:
        choice = _choice(need)
        there = [name for name in choice if name in given]
        names = " or ".join(f'"{name}"' for name in choice)
        if not there:
            raise Unsolvable(("find",), f'"find: {find}" needs {names}.', f"add {names}.", "activity-broken")
        if len(there) > 1 and "^" in need:
            message = f'"find: {find}" takes only one of {names}; the other would be passed over in silence.'
            raise Unsolvable((there[1],), message, "keep one of them.", "activity-broken")
    understood = {"find", *finding.may, *(name for need in finding.needs for name in _choice(need))}
    for name in given:
        if name not in understood:
            message = f'"{name}" has no part in "find: {find}", so it would be passed over in silence.'
            raise Unsolvable((name,), message, "leave it out, or ask for something else.", "activity-broken")
    if "fact" in given and not context.characters:
        raise Unsolvable(("cast",), "There is nobody in the cast.", "name some characters.", "activity-fact-missing")
    if len(context.characters) > context.caps.characters:
        message = f"{len(context.characters)} characters are more than one activity can hold."
        raise Unsolvable(("cast",), message, f"choose at most {context.caps.characters}.")
    solution = finding.solve(fields, context)
    if len(solution.answers) > context.caps.answers:
        message = f"There are {len(solution.answers):,} answers."
        raise Unsolvable(("find",), message, "choose smaller numbers or fewer things.", "activity-too-many-answers")
    answers = tuple(replace(answer, says=answer.says.removesuffix(".")) for answer in solution.answers)
    return replace(solution, answers=answers, task=replace(solution.task, ask=fields.ask or solution.task.ask))


def _choice(need: str) -> list[str]:
    return need.replace("^", "|").split("|")


@cache
def own_fields(kind: type[ActivityFields]) -> tuple[str, ...]:
    """The names of the fields a kind adds to those of every kind, in their order."""
    return tuple(name for name in kind.model_fields if name not in ActivityFields.model_fields)


def _stated(fields: ActivityFields, name: str) -> bool:
    return name in fields.model_fields_set and getattr(fields, name) not in (None, (), {})
