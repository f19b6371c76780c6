"""Tasks whose fields say, beside their type, what sort of numbers they hold, so that a version can change each sort."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from enum import Enum
from typing import TypeVar

from .kind import ActivityFields

F = TypeVar("F", bound=ActivityFields)
Change = Callable[[object], object]


def with_changed(fields: F, changes: Mapping[Enum, Change]) -> F:
    """The task with the value of each field changed as the sort it is annotated with says.

    It asks in the kind's own words: its author's name the old numbers.
    """
    new: dict[str, object] = {"ask": None}
    for name, value in fields:
        for sort in type(fields).model_fields[name].metadata:
            if isinstance(sort, Enum) and sort in changes:
                new[name] = changes[sort](value)
    return fields.model_copy(update=new)


def each(change: Callable[[int], int]) -> Change:
    """A change of every number in a value, however deep in lists and mappings; what is not given stays so."""

    def changed(value: object) -> object:
        if isinstance(value, int):
            return change(value)
        if isinstance(value, tuple):
            return tuple(map(changed, value))
        return {name: changed(one) for name, one in value.items()} if isinstance(value, Mapping) else value

    return changed
