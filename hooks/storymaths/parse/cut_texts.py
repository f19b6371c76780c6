"""Sentences of front matter that YAML cuts: at `` #``, which begins a comment, and at a comma in a list within ``[ ]``."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import pairwise

import yaml

_CUT = re.compile(r"[ \t]#(?=\S)(?!#)|[ \t]#[ \t]?\d")
"""A note of an author begins ``# so``; in a sentence the sign stands before what it counts: ``#2``, ``# 2``."""
_AT_ONCE = re.compile(r"[ \t]+#(?:[^\s#]|[ \t]?\d)")
_SENTENCE_BEGINS = re.compile(r"[A-Z0-9“\"']")
_GOES_ON = re.compile(r"[a-z]+['’]?[a-z]* ")
_COMMA = re.compile(r"\[[^\[\]{}\n]*,[ \t]+[a-z]+['’]?[a-z]* [^\[\]{}]*[.?!][\"']?\s*\]")
"""A list within ``[ ]`` in which words go on after a comma, and whose last piece ends as a sentence does."""
_ENDS = (".", "?", "!")


def cut_texts(front: str, tree: yaml.Node | None) -> Iterator[tuple[yaml.Node, str, str]]:
    """What is cut in front matter, whose nodes are ``tree``: its node, the sign it is cut at (``#`` or ``,``), and what is left."""
    if not _CUT.search(front) and not _COMMA.search(front):
        return  # nearly every page
    lines = front.split("\n")
    for node in _nodes(tree):
        if isinstance(node, yaml.ScalarNode):
            end = node.end_mark
            if not node.style and " " in node.value and _AT_ONCE.match(lines[end.line], end.column):
                yield node, "#", node.value
        elif isinstance(node, yaml.SequenceNode) and node.flow_style:
            yield from ((one, ",", one.value) for one in _split_at_commas(node.value))


def _split_at_commas(items: list[yaml.Node]) -> Iterator[yaml.ScalarNode]:
    """The pieces that begin a sentence which the next piece goes on with: ``[Five, because I counted them.]``."""
    for one, after in pairwise(items):
        if (
            isinstance(one, yaml.ScalarNode)
            and isinstance(after, yaml.ScalarNode)
            and not one.style
            and not after.style
            and _SENTENCE_BEGINS.match(one.value)
            and not one.value.endswith(_ENDS)
            and _GOES_ON.match(after.value)
            and str(items[-1].value).endswith(_ENDS)
        ):
            yield one


def _nodes(node: yaml.Node | None) -> Iterator[yaml.Node]:
    if node is not None:
        yield node
    if isinstance(node, yaml.SequenceNode):
        for item in node.value:
            yield from _nodes(item)
    elif isinstance(node, yaml.MappingNode):
        for _, value in node.value:
            yield from _nodes(value)
