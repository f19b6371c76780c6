"""A list of the program's with what a collection adds to it or corrects, entry by entry; and where each value was written."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from ..model.locator import Locator
from ..model.problem import Place
from ..model.prose import Loc

_IDENTITIES = ("id", "word", "code", "year", "date")
"""What names an entry of a list, in the order in which they are looked for."""


def merged(base: Any, own: Any) -> Any:
    """The value of both: an entry of ``own`` with the name of one in ``base`` corrects that field by field, others are added."""
    if isinstance(base, Mapping) and isinstance(own, Mapping):
        return {**base, **{key: merged(base[key], value) if key in base else value for key, value in own.items()}}
    name = _identity(base)
    if not isinstance(own, list) or not name:
        return own
    both, places = list(base), {str(entry[name]): place for place, entry in enumerate(base)}
    for entry in own:
        place = places.pop(str(entry[name]), None) if isinstance(entry, Mapping) and name in entry else None
        if place is None:  # new, or in the list twice, which is found out later
            both.append(entry)
        else:
            both[place] = merged(both[place], entry)
    return both


def _identity(entries: Any) -> str:
    if not isinstance(entries, list) or not entries:
        return ""
    whole = [name for name in _IDENTITIES if all(isinstance(entry, Mapping) and name in entry for entry in entries)]
    return whole[0] if whole else ""


class LayeredLocator:
    """Finds a value of a merged list in the collection's own file if it was written there, else in the program's."""

    def __init__(self, both: Any, layers: Sequence[tuple[Any, Locator]]) -> None:
        """``layers`` are the values and the locators of the files, the collection's own first."""
        self._both, self._layers = both, layers

    def place(self, loc: Loc, within: str = "", before: str = "") -> Place:
        """The place of a value, as a locator of one file gives it."""
        for value, locator in self._layers:
            there = self._within(value, loc)
            if there is not None:
                return locator.place(there, within, before)
        return self._layers[0][1].place(())

    def _within(self, layer: Any, loc: Loc) -> Loc | None:
        """The way to a value in one layer; None if it is not there."""
        both, way = self._both, list[str | int]()
        for step in loc:
            if step == "[key]":
                return (*way, step)
            there = step
            if isinstance(both, list) and isinstance(step, int):
                there = _place_of(both, step, layer)
            if not _holds(layer, there):
                return None
            both, layer = both[step], layer[there]
            way.append(there)
        return tuple(way)


def _place_of(both: Sequence[Any], step: int, layer: Any) -> int:
    """Where an entry of the merged list is in a layer's own; -1 if it is not there."""
    if not isinstance(layer, list):
        return -1
    entry = both[step]
    same = next((place for place, one in enumerate(layer) if one is entry), -1)
    name = _identity(both)
    if same >= 0 or not name:
        return same if same >= 0 else step
    return next((n for n, one in enumerate(layer) if isinstance(one, Mapping) and one.get(name) == entry[name]), -1)


def _holds(layer: Any, step: str | int) -> bool:
    if isinstance(layer, list):
        return isinstance(step, int) and 0 <= step < len(layer)
    return isinstance(layer, Mapping) and step in layer
