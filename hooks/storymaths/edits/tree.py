"""A text of YAML as nodes with the stretches of the text that are theirs."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import yaml

from ..parse.yaml_text import compose
from .data import in_words
from .edit import EditRefused


@dataclass(frozen=True, slots=True)
class Entry:
    """An item of a list, or a key with its value: from its first sign (its dash, its key) to past its last."""

    key: yaml.Node | None
    node: yaml.Node
    start: int
    end: int


def content_end(text: str, node: yaml.Node) -> int:
    """The offset just past the last sign of a node; the blank lines and notes that follow it are nobody's."""
    if isinstance(node, yaml.ScalarNode):
        if node.style in ("|", ">"):
            return len(text[: node.end_mark.index].rstrip())
        return int(node.end_mark.index)
    if is_flow(node) and text[node.start_mark.index] in "[{":
        return int(node.end_mark.index)
    if not node.value:
        return int(node.end_mark.index)
    key, last = node.value[-1] if isinstance(node, yaml.MappingNode) else (None, node.value[-1])
    return max(content_end(text, last), past_colon(text, key) if key else 0)


def past_colon(text: str, key: yaml.Node) -> int:
    """The offset past the colon of a key."""
    at = text.find(":", key.end_mark.index)
    if at < 0:
        raise EditRefused(f'"{key.value}" has no colon after it: put that right in its file first.')
    return at + 1


def is_flow(node: yaml.Node) -> bool:
    """Whether a list or mapping is written in brackets or braces, or is a pair within brackets."""
    return bool(getattr(node, "flow_style", False))  # scalars have none


def entries(text: str, node: yaml.Node) -> list[Entry]:
    """The items or keys of a node, in order."""
    if isinstance(node, yaml.MappingNode):
        return [
            Entry(key, value, key.start_mark.index, max(content_end(text, value), past_colon(text, key)))
            for key, value in node.value
        ]
    if isinstance(node, yaml.SequenceNode):
        flow = is_flow(node)
        return [
            Entry(None, item, item.start_mark.index if flow else _dash(text, node, item), content_end(text, item))
            for item in node.value
        ]
    return []


def _dash(text: str, listed: yaml.Node, item: yaml.Node) -> int:
    """The dash of an item: in the column of its list, on the line of the item or above it."""
    column, line_end = listed.start_mark.column, item.start_mark.index
    while True:
        start = text.rfind("\n", 0, line_end) + 1
        at = start + column
        if at <= item.start_mark.index and text[at : at + 1] == "-":
            return at
        if start == 0:
            raise EditRefused(
                "A list of the page is written in a way that cannot be changed here: change it in its file."
            )
        line_end = start - 1


def node_at(text: str, path: Sequence[str | int]) -> tuple[yaml.Node, list[tuple[yaml.Node, int]]]:
    """The node at a path; and for each step to it the node it stands in and its number there."""
    node = compose(text)
    above = list[tuple[yaml.Node, int]]()
    for step in path:
        at = number_of(node, step)
        if node is None or at is None:
            raise EditRefused(f"There is no {in_words(path)} in the page any more.")
        above.append((node, at))
        node = node.value[at][1] if isinstance(node, yaml.MappingNode) else node.value[at]
    if node is None:
        raise EditRefused("Nothing stands there yet: write its first line in its file.")
    return node, above


def number_of(node: yaml.Node | None, step: str | int) -> int | None:
    """The number of an item or key within a node; None if it is not there."""
    if isinstance(node, yaml.MappingNode):
        return next((at for at, (key, _) in enumerate(node.value) if key.value == str(step)), None)
    if isinstance(node, yaml.SequenceNode) and isinstance(step, int) and step < len(node.value):
        return step
    return None


def notes(text: str) -> Iterator[tuple[int, str]]:
    """Every note of the author's (``# so``), and its offset."""
    if "#" not in text:
        return
    at = 0
    for token in yaml.scan(text, Loader=yaml.CSafeLoader):
        start, end = token.start_mark.index, token.end_mark.index
        if end > start:
            yield from _notes_in(text, at, start)
            if isinstance(token, yaml.ScalarToken) and token.style in ("|", ">"):
                yield from _notes_in(text, start, text.find("\n", start))
            at = end
    yield from _notes_in(text, at, len(text))


def _notes_in(text: str, start: int, end: int) -> Iterator[tuple[int, str]]:
    while (at := text.find("#", start, end)) >= 0:
        start = line_end(text, at)
        yield at, text[at:start].strip()


def line_start(text: str, at: int) -> int:
    """Where the line of an offset begins."""
    return text.rfind("\n", 0, at) + 1


def line_end(text: str, at: int) -> int:
    """Where the line of an offset ends, past its line break."""
    end = text.find("\n", at)
    return len(text) if end < 0 else end + 1
