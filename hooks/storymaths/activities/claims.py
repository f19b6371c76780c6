"""What an author says of the answers, held against what is found."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from typing import Any

from ..model.activity import Answer, Solution
from .kind import ActivityFields, Kind
from .saying import listed

_LISTED = 6
_RELATION = re.compile(r"\s*([=≠])\s*")


def claim_fault(kind: Kind[Any], fields: ActivityFields, solution: Solution) -> tuple[str, str] | None:
    """What is wrong with ``answers:`` and what to do; None when it is right or nothing is said."""
    claim, found = fields.answers, solution.answers
    if claim is None:
        return None
    if isinstance(claim, int):
        return None if claim == len(found) else (_miscounted(claim, solution), f"write answers: {len(found)}.")
    unordered = kind.unordered
    keys = [_keys(answer, unordered) for answer in found]
    said = [_key(str(item), unordered) for item in claim]
    missed = [answer for answer, own in zip(found, keys, strict=True) if not own & set(said)]
    false = [str(item) for item, key in zip(claim, said, strict=True) if not any(key in own for own in keys)]
    twice = [str(item) for index, item in enumerate(claim) if said[index] in said[:index]]
    if not missed and not false and not twice:
        return None
    parts = [f"You list {_count(len(claim))}; there {_are(len(found))}."]
    if false:
        parts.append(f"Not {'an answer' if len(false) == 1 else 'answers'}: {_some(false)}.")
    if missed:
        parts.append(f"Not in your list: {_some([answer.says for answer in missed])}.")
    if twice:
        parts.append(f"In your list twice: {_some(twice)}.")
    return " ".join(parts), "put the list right, or change the activity."


def claims_none(fields: ActivityFields) -> bool:
    """Whether the author says that there is no answer."""
    return fields.answers in (0, ())


def _miscounted(claim: int, solution: Solution) -> str:
    found = solution.answers
    if not found:
        return f"You say {claim}; there are none. {solution.note}".rstrip()
    first = found[0].says.rstrip(".")
    if len(found) == 1:
        return f"You say {claim}; there is 1: {first}."
    return f"You say {claim}; there are {len(found)}. One of them: {first}."


def _keys(answer: Answer, unordered: bool) -> set[str]:
    """What an author may write for an answer: its words, or its one value where its data holds but one."""
    keys = {_key(answer.says, unordered)}
    if len(answer.data) == 1:
        value = next(iter(answer.data.values()))
        if not isinstance(value, (Mapping, list, tuple)):
            keys.add(_key(str(value), unordered))
    return keys


def _key(text: str, unordered: bool) -> str:
    """Words as compared: letters' size, spaces and kinds of dash and cross do not count."""
    plain = " ".join(text.casefold().split()).replace("-", "−").strip(" .")
    plain = re.sub(r"\s*([+−×÷=≠<>,;])\s*", r"\1", plain)
    if not unordered:
        return plain
    parts = _RELATION.split(plain)
    sides = sorted("+".join(sorted(side.split("+"))) for side in parts[::2])
    return (parts[1] if len(parts) > 1 else "").join(sides)


def _count(number: int) -> str:
    return "none" if number == 0 else str(number)


def _are(number: int) -> str:
    return "is 1" if number == 1 else f"are {_count(number)}"


def _some(items: Sequence[str]) -> str:
    shown = list(items[:_LISTED])
    if len(items) > _LISTED:
        shown.append(f"{len(items) - _LISTED} more")
    return listed(shown) if not any("," in item for item in shown) else "; ".join(shown)
