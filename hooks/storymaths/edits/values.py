"""A value of a YAML text changed: the span it stands in is found and replaced, and the text read again."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from typing import Any

import yaml

from ..model.prose import Loc
from ..parse.yaml_text import BrokenYaml, load
from .data import expect, holds, in_words, plain, same, same_but_order, value_at
from .edit import AddItem, EditRefused, MoveItem, RemoveItem, SetValue, ValueEdit
from .order import place_of_key
from .spans import add_item, add_key, move_item, remove, set_value
from .tree import entries, line_end, node_at, notes

Keys = Callable[[Loc], Sequence[str]]
"""The keys of the mapping at a path, in their usual order."""


def change_value(text: str, edit: ValueEdit, keys: Keys) -> str:
    """The text with a value changed. Raises ``EditRefused``, with the text as it was, where that cannot be done."""
    raw = _read(text)
    if isinstance(edit, AddItem) and (not _is_there(raw, edit.path) or value_at(raw, edit.path) is None):
        edit = SetValue(edit.path, [edit.value])
    if isinstance(edit, SetValue):
        whole = _split(raw, edit)
        for one in whole:
            text = _change_one(text, one, keys)
        if len(whole) != 1 and not same_but_order(value_at(_read(text), edit.path), plain(edit.value)):
            raise EditRefused(f"{in_words(edit.path)} could not be changed: change it in its file.")
        return text
    return _change_one(text, edit, keys)


def _read(text: str) -> Any:
    try:
        raw, twice = load(text)
    except BrokenYaml as broken:
        raise EditRefused(
            f"The page cannot be read at its line {broken.line}: put that right in its file first."
        ) from None
    if twice:
        raise EditRefused(f'"{twice[0].key}" is written twice in the page: take one of the two out in its file first.')
    return {} if raw is None else raw


def _split(raw: Any, edit: SetValue) -> list[ValueEdit]:
    """A value as the smallest changes that make it: an item of a list that stays stays as it is written."""
    path, value = edit.path, plain(edit.value)
    missing = next((n for n in range(len(path)) if not _is_there(raw, path[: n + 1])), None)
    if missing is not None:
        for step in reversed(path[missing + 1 :]):
            value = {step: value}
        if missing and value_at(raw, path[:missing]) is None:
            return [SetValue(path[:missing], {path[missing]: value})]
        return [SetValue(path[: missing + 1], value)]
    old = value_at(raw, path)
    if isinstance(old, dict) and isinstance(value, dict) and old and value and path:
        return _split_keys(raw, path, old, value)
    if isinstance(old, list) and isinstance(value, list) and old and value:
        return _split_items(raw, path, old, value)
    return [] if same(old, value) else [SetValue(path, value)]


def _is_there(raw: Any, path: Loc) -> bool:
    for step in path:
        if not holds(raw, step):
            return False
        raw = raw[step]
    return True


def _split_keys(raw: Any, path: Loc, old: dict[Any, Any], new: dict[Any, Any]) -> list[ValueEdit]:
    kept = [key for key in old if key in new]
    if not kept or [key for key in new if key in old] != kept:
        return [SetValue(path, new)]
    found: list[ValueEdit] = []
    for key in kept:
        found += _split(raw, SetValue((*path, key), new[key]))
    found += [RemoveItem((*path, key)) for key in old if key not in new]
    found += [SetValue((*path, key), value) for key, value in new.items() if key not in old]
    return found


def _split_items(raw: Any, path: Loc, old: list[Any], new: list[Any]) -> list[ValueEdit]:
    most = min(len(old), len(new))
    first = next((n for n in range(most) if not same(old[n], new[n])), most)
    last = next((n for n in range(most - first) if not same(old[-1 - n], new[-1 - n])), most - first)
    both = most - first - last
    found: list[ValueEdit] = []
    for n in range(first, first + both):
        found += _split(raw, SetValue((*path, n), new[n]))
    found += [AddItem(path, new[n], n) for n in range(first + both, len(new) - last)]
    found += [RemoveItem((*path, n)) for n in reversed(range(first + both, len(old) - last))]
    return found


def _change_one(text: str, edit: ValueEdit, keys: Keys) -> str:
    raw = _read(text)
    at_key = 0
    if isinstance(edit, SetValue) and edit.path and not _is_there(raw, edit.path):
        holder = value_at(raw, edit.path[:-1])
        if isinstance(holder, dict):
            at_key = place_of_key(edit.path[-1], list(holder), keys(edit.path[:-1]))
    wanted = expect(raw, edit, at_key)
    start, end = _span_to_go(text, raw, edit)
    kept = Counter(note for at, note in notes(text) if not start <= at < end)
    for made in _forms(text, raw, edit, at_key):
        try:
            read, twice = load(made)
            if not twice and same(read, wanted) and kept <= Counter(note for _, note in notes(made)):
                return made
        except (BrokenYaml, yaml.YAMLError):
            continue
    raise EditRefused(
        f"{in_words(edit.path)} could not be changed without touching what stands around it: change it in its file."
    )


def _forms(text: str, raw: Any, edit: ValueEdit, at_key: int) -> Iterator[str]:
    match edit:
        case SetValue(path, value) if _is_there(raw, path):
            return set_value(text, path, plain(value))
        case SetValue(path, value):
            return add_key(text, path, plain(value), at_key)
        case AddItem(path, value, at):
            return add_item(text, path, plain(value), at)
        case RemoveItem(path):
            return remove(text, path)
        case MoveItem(path, to):
            return move_item(text, path, to)


def _span_to_go(text: str, raw: Any, edit: ValueEdit) -> tuple[int, int]:
    """The stretch of the text whose notes may go: what is taken out or replaced, with the rest of its last line."""
    if isinstance(edit, AddItem | MoveItem) or not _is_there(raw, edit.path):
        return 0, 0
    _, above = node_at(text, edit.path)
    entry = entries(text, above[-1][0])[above[-1][1]]
    if isinstance(edit, SetValue) and isinstance(entry.node, yaml.ScalarNode):
        return 0, 0
    return entry.start, line_end(text, entry.end)
