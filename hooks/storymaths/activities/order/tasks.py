"""The two tasks of an order, by a fact or by clues, and what an answer is."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Annotated, Any, ClassVar, Literal

from pydantic import Field

from ...model.fields import Text
from ..kind import ActivityFields


class _Order(ActivityFields):
    starting: Literal["least", "most"] = "least"
    """Which end of the order comes first."""
    unit: str | None = None
    """The unit of the fact; the book's own if not stated."""


class OrderByFact(_Order):
    """Everybody in order of what they have, equals side by side."""

    task_name: ClassVar[str] = "fact"

    fact: Text


class OrderByClues(_Order):
    """Every order that some clues allow. Pupils see no values; where a fact is given, the clues are checked by it."""

    task_name: ClassVar[str] = "clues"

    clues: Annotated[tuple[Text, ...], Field(max_length=20)] = ()
    """Such as ``gull > crab``, ``seal between gull and crab``, ``gull next to crab``, ``gull first``."""


OrderTask = OrderByFact | OrderByClues


def schema_for(raw: Mapping[str, Any]) -> type[OrderTask]:
    """With clues the order follows from them, and else from a fact."""
    return OrderByClues if raw.get("clues") or not raw.get("fact") else OrderByFact


@dataclass(frozen=True, slots=True)
class OrderFound:
    """An order from the end the activity starts with."""

    order: tuple[tuple[str, ...], ...]
    """The names of those that are equal, as the cast is listed where that is free."""
