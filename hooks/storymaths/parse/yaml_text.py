"""YAML with positions: the value, keys written twice, and the line and column of any part."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from typing import Any, ClassVar

import yaml

from ..model.document import Loc
from ..model.locator import find_words
from ..model.names import PRINTS_NOTHING, Prints, hide, reveal
from ..model.problem import Place
from .yaml_slips import find_slip

_DEEPEST = 32
"""Levels inside each other. Front matter has five; a thousand, which is where the C loader stops, are a trap."""
_LONGEST_NUMBER = 9
"""Digits of a key that is a number: keys that are numbers are years."""
_WORDS = "tag:yaml.org,2002:str"
_EQUALS = "tag:yaml.org,2002:value"
"""What YAML 1.1 makes of a bare ``=``, which nothing else knows what to do with: here it is the sign."""
_TAGGED = "a tag (!) asks for something to be made of it; write words, lists and keys only"
_PLAIN = frozenset({"tag:yaml.org,2002:seq", "tag:yaml.org,2002:map"})


# The C loader is some eight times faster than the pure one; PyYAML's wheels carry it.
class _Loader(yaml.CSafeLoader):
    """The C loader, which asks in Python what each bare word is: the answer to a short one is kept for the next page."""

    _kept: ClassVar[dict[str, str]] = {}
    _LONGEST, _MOST = 24, 10_000

    def resolve(self, kind: type[yaml.Node], value: str, implicit: Any) -> str:
        """The tag of a value that has none written."""
        if kind is not yaml.ScalarNode:
            return str(super().resolve(kind, value, implicit))  # type: ignore[no-untyped-call]
        if not implicit[0]:
            return _WORDS
        tag = self._kept.get(value)
        if tag is None:
            tag = str(super().resolve(kind, value, implicit))  # type: ignore[no-untyped-call]
            tag = _WORDS if tag == _EQUALS else tag
            if len(value) <= self._LONGEST and len(self._kept) < self._MOST:
                self._kept[value] = tag
        return tag

    # Tags that turn on the path to a value: no schema here has any.
    def descend_resolver(self, node: yaml.Node, index: Any) -> None:
        """Nothing to note."""

    def ascend_resolver(self) -> None:
        """Nothing to forget."""


class BrokenYaml(ValueError):
    """Text that is not YAML: the reason, what mends it where that is known, and the line and column (from 1)."""

    def __init__(self, reason: str, line: int, column: int, fix: str = "") -> None:
        super().__init__(reason)
        self.reason, self.line, self.column, self.fix = reason, line, column, fix


@dataclass(frozen=True, slots=True)
class TwiceKey:
    """A key written again in one mapping: its name and the second one's line and column."""

    key: str
    line: int
    column: int


def compose(text: str) -> yaml.Node | None:
    """The node tree of a text; names in its values are hidden, sign for sign. Raises ``BrokenYaml``."""
    loader = _Loader(hide(text))
    try:
        return loader.get_single_node()
    except yaml.YAMLError as error:
        raise _broken(error, text) from None
    finally:
        loader.dispose()


def load(text: str) -> tuple[Any, list[TwiceKey]]:
    """The value of a text, and any keys written twice. Raises ``BrokenYaml``."""
    value, twice, _ = load_with_nodes(text)
    return value, twice


def load_with_nodes(text: str) -> tuple[Any, list[TwiceKey], yaml.Node | None]:
    """The value of a text, any keys written twice, and the node tree it was made of. Raises ``BrokenYaml``."""
    loader = _Loader(hide(text))
    try:
        node = loader.get_single_node()
        if node is None:
            return None, [], None
        values = _Values(loader, named="[[" in text)
        return values.of(node), values.twice, node
    except yaml.YAMLError as error:
        raise _broken(error, text) from None
    finally:
        loader.dispose()


def _broken(error: yaml.YAMLError, text: str) -> BrokenYaml:
    mark = error.problem_mark if isinstance(error, yaml.MarkedYAMLError) else None
    if mark is None:
        return BrokenYaml("the text could not be read", 1, 1)
    slip = find_slip(text, mark.line + 1)
    return BrokenYaml(slip.reason, slip.line, mark.column + 1 if slip.line == mark.line + 1 else 1, slip.fix)


class _Values:
    """Makes values of nodes, noting keys written twice.

    PyYAML's own maker lets a second key win in silence, and walks each node through a general table; nearly
    all nodes here are words, lists and mappings, which this makes at half the cost.
    """

    def __init__(self, loader: _Loader, *, named: bool) -> None:
        self._loader, self._named = loader, named
        self._seen: set[int] = set()
        self._deep = 0
        self.twice: list[TwiceKey] = []

    def of(self, node: yaml.Node) -> Any:
        """The value of a node."""
        if node.__class__ is yaml.ScalarNode:
            if node.tag == _WORDS:
                return reveal(node.value) if self._named else node.value
            return self._scalar(node)
        if id(node) in self._seen:
            line, column = node.start_mark.line + 1, node.start_mark.column + 1
            raise BrokenYaml("an alias (*) repeats it elsewhere; write the value out in both places", line, column)
        if node.tag not in _PLAIN:
            raise BrokenYaml(_TAGGED, node.start_mark.line + 1, node.start_mark.column + 1)
        self._seen.add(id(node))
        self._deep += 1
        if self._deep > _DEEPEST:
            reason = "lists stand inside lists too many times over"
            raise BrokenYaml(reason, node.start_mark.line + 1, node.start_mark.column + 1)
        made = [self.of(item) for item in node.value] if node.__class__ is yaml.SequenceNode else self._mapping(node)
        self._deep -= 1
        return made

    def _mapping(self, node: yaml.Node) -> dict[Any, Any]:
        made: dict[Any, Any] = {}
        for key, value in node.value:
            if key.__class__ is not yaml.ScalarNode:
                raise BrokenYaml("a key is a list or a mapping", key.start_mark.line + 1, key.start_mark.column + 1)
            name = self._key(key)
            if name in made:
                self.twice.append(TwiceKey(str(name), key.start_mark.line + 1, key.start_mark.column + 1))
                continue  # places are those of the first, so what is said of its value is of the first too
            made[name] = self.of(value)
        return made

    def _key(self, node: yaml.Node) -> Any:
        """A name, or a short whole number: ``no``, ``~`` and days are names as they are written, and found again by that."""
        name = self.of(node)
        whole = type(name) is int and str(name) == node.value and len(node.value) <= _LONGEST_NUMBER
        return name if whole or isinstance(name, str) else node.value

    def _scalar(self, node: yaml.Node) -> Any:
        # What makes values trusts a tag somebody wrote, and fails in ways of its own on !!timestamp x.
        if node.tag != self._loader.resolve(yaml.ScalarNode, node.value, (True, False)):
            raise BrokenYaml(_TAGGED, node.start_mark.line + 1, node.start_mark.column + 1)
        try:
            return self._loader.construct_object(node)
        except (ValueError, TypeError, OverflowError):  # a date such as 2027-02-30
            line, column = node.start_mark.line + 1, node.start_mark.column + 1
        fix = "write a day as year-month-day, such as 2027-01-11; put anything else in quotes."
        raise BrokenYaml(f"{node.value} is not a day of the calendar", line, column, fix)


class YamlLocator:
    """Finds places in a YAML text, of which ``prints`` prints the names, that stands ``lines_above`` lines down a file."""

    def __init__(self, path: str, text: str, lines_above: int = 0, prints: Prints = PRINTS_NOTHING) -> None:
        self._path, self._text, self._above, self._prints = path, text, lines_above, prints

    @cached_property
    def _node(self) -> yaml.Node | None:
        """Composed when a problem needs it, and then kept: where there is one there are often many."""
        return compose(self._text)

    def place(self, loc: Loc, within: str = "", before: str = "") -> Place:
        """The place of a value; of its key where ``loc`` ends in ``[key]``; of the nearest parent if missing.

        With ``within``, the place of those words in the value, after the words ``before``.
        """
        try:
            node = self._node
        except BrokenYaml as broken:
            return Place(self._path, broken.line + self._above, broken.column)
        key: yaml.Node | None = None
        for step in loc:
            if node is None or step == "[key]":
                break
            next_key, value = _child(node, step)
            if value is None:
                break
            key, node = next_key, value
        if loc and loc[-1] == "[key]" and key is not None:
            node = key
        if node is None:
            return Place(self._path, 1 + self._above)
        if within:
            return self._within(node, within, before)
        return Place(self._path, node.start_mark.line + 1 + self._above, node.start_mark.column + 1)

    def _within(self, node: yaml.Node, words: str, before: str) -> Place:
        start = node.start_mark.index  # C marks count in characters
        written = self._text[start : node.end_mark.index]
        at = self._prints.position(written, find_words(self._prints.text(written), words, before))
        above = self._text[: start + max(at, 0)]
        return Place(self._path, above.count("\n") + 1 + self._above, len(above) - above.rfind("\n"))


def _child(node: yaml.Node, step: str | int) -> tuple[yaml.Node | None, yaml.Node | None]:
    if isinstance(node, yaml.MappingNode):
        for key, value in node.value:
            if key.value == str(step):
                return key, value
    if isinstance(node, yaml.SequenceNode) and isinstance(step, int) and step < len(node.value):
        return None, node.value[step]
    return None, None
