"""Where things stand in the text of a YAML file, and edits of nothing but those spans: all else stays to the letter."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from typing import NamedTuple

import yaml

from ..parse.yaml_text import BrokenYaml, compose

Entry = tuple[yaml.Node, yaml.Node]
"""A key and its value."""
FRONT_MATTER = re.compile(r"\A\ufeff?---[ \t]*\r?\n(.*?)^---[ \t]*(?:\r?\n|\Z)", re.DOTALL | re.MULTILINE)


class Edit(NamedTuple):
    """Other words for a span of a text."""

    start: int
    end: int
    new: str


class Yaml(NamedTuple):
    """A part of a text that is YAML: its words, where it starts, and what it holds."""

    words: str
    at: int
    root: yaml.MappingNode


def yaml_in(text: str, at: int = 0, end: int | None = None) -> Yaml | None:
    """A part of a text, if it is a YAML mapping."""
    at += text.startswith("\ufeff", at)
    words = text[at:end]
    try:
        root = compose(words)
    except BrokenYaml:
        return None
    return Yaml(words, at, root) if isinstance(root, yaml.MappingNode) else None


def front_matter_in(text: str) -> Yaml | None:
    """The front matter of a page, if it can be read."""
    match = FRONT_MATTER.match(text)
    return yaml_in(text, match.start(1), match.end(1)) if match else None


def edited(text: str, edits: Iterable[Edit]) -> str:
    """The text with its edits, which do not overlap."""
    for edit in sorted(edits, reverse=True):
        text = text[: edit.start] + edit.new + text[edit.end :]
    return text


def line_break_of(text: str) -> str:
    """How the lines of a file end."""
    return "\r\n" if "\r\n" in text else "\n"


def child(node: yaml.Node, name: str) -> Entry | None:
    """The entry of a mapping with this key."""
    if not isinstance(node, yaml.MappingNode):
        return None
    return next((entry for entry in node.value if entry[0].value == name), None)


def entries(node: yaml.Node, keys: Sequence[str]) -> Iterator[tuple[yaml.Node, Entry]]:
    """Every entry that keys lead to, through any list on the way; each with the mapping it is of."""
    if isinstance(node, yaml.SequenceNode):
        for item in node.value:
            yield from entries(item, keys)
    elif found := child(node, keys[0]):
        if len(keys) > 1:
            yield from entries(found[1], keys[1:])
        else:
            yield node, found
