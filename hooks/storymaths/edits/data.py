"""What a page's data must be once a value is changed, worked out on the data alone; and whether two data are the same."""

from __future__ import annotations

import copy
from collections.abc import Mapping, Sequence
from typing import Any

from .edit import AddItem, EditRefused, MoveItem, RemoveItem, SetValue, ValueEdit


def value_at(raw: Any, path: Sequence[str | int]) -> Any:
    """The value at a path. Raises ``EditRefused`` where nothing stands there."""
    for step in path:
        if not holds(raw, step):
            raise EditRefused(f"There is no {in_words(path)} in the page any more.")
        raw = raw[step]
    return raw


def holds(raw: Any, step: str | int) -> bool:
    """Whether a list or mapping has something at a step."""
    if isinstance(raw, list):
        return isinstance(step, int) and 0 <= step < len(raw)
    return isinstance(raw, dict) and step in raw


def in_words(path: Sequence[str | int]) -> str:
    """A path as an author reads it: items are counted from 1."""
    return " › ".join(str(step + 1) if isinstance(step, int) else f'"{step}"' for step in path)


def expect(raw: Any, edit: ValueEdit, at_key: int = 0) -> Any:
    """The data after a change. A new key stands as the ``at_key``-th of its mapping. Raises ``EditRefused``."""
    made = copy.deepcopy(raw)
    match edit:
        case SetValue(path, value):
            if not path:
                return plain(value)
            holder = value_at(made, path[:-1])
            if isinstance(holder, dict) and path[-1] not in holder:
                rest = list(holder.items())
                holder.clear()
                holder.update([*rest[:at_key], (path[-1], plain(value)), *rest[at_key:]])
            else:
                value_at(holder, path[-1:])
                holder[path[-1]] = plain(value)
        case AddItem(path, value, at):
            listed = _list_at(made, path)
            listed.insert(len(listed) if at is None else at, plain(value))
        case RemoveItem(path):
            value_at(made, path)
            del value_at(made, path[:-1])[path[-1]]
        case MoveItem(path, to):
            listed = _list_at(made, path[:-1])
            item = value_at(made, path)
            if not 0 <= to < len(listed):
                raise EditRefused(f"{in_words(path)} cannot be moved beyond the ends of its list.")
            del listed[int(path[-1])]
            listed.insert(to, item)
    return made


def _list_at(raw: Any, path: Sequence[str | int]) -> list[Any]:
    listed = value_at(raw, path)
    if not isinstance(listed, list):
        raise EditRefused(f"{in_words(path)} is not a list.")
    return listed


def plain(value: Any) -> Any:
    """A value as YAML reads it: lists and dictionaries."""
    if isinstance(value, Mapping):
        return {key: plain(inner) for key, inner in value.items()}
    if isinstance(value, Sequence) and not isinstance(value, str):
        return [plain(inner) for inner in value]
    return value


def same(one: Any, other: Any) -> bool:
    """Whether two data are equal, in the sorts of their values and the order of their keys too."""
    if type(one) is not type(other):
        return False
    if isinstance(one, dict):
        pairs = zip(one.items(), other.items(), strict=False)
        return len(one) == len(other) and all(same(a, b) and same(one[a], y) for (a, _), (b, y) in pairs)
    if isinstance(one, list):
        return len(one) == len(other) and all(map(same, one, other))
    return bool(one == other)


def same_but_order(one: Any, other: Any) -> bool:
    """Whether two data are equal but for the order of their keys."""
    if isinstance(one, dict) and isinstance(other, dict):
        return one.keys() == other.keys() and all(same_but_order(value, other[key]) for key, value in one.items())
    if isinstance(one, list) and isinstance(other, list):
        return len(one) == len(other) and all(map(same_but_order, one, other))
    return same(one, other)
