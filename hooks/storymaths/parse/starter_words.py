"""What ``storymaths new`` leaves to an author: the words of a starter that she puts her own in place of.

In a starter these stand in blocks (``>-``), in fields it offers in its notes, and in the paragraphs of the body.
All else in it may stay as it is.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import yaml

from ..model.body import Body, Paragraph, words_of_runs
from .body import read_body
from .yaml_text import compose

_OFFERED = re.compile(r"^#[ ]+(?:\w+:|-) ([A-Z].*[.?])$", re.MULTILINE)
"""A sentence of a field that is offered: it stands in a note, to be taken out of it."""
_STARTERS = Path(__file__).parents[1] / "publish" / "page_kinds"


@cache
def starter_words(kind: str) -> frozenset[str]:
    """The texts that a starter of a kind of page leaves to its author; none where the kind has no starter here."""
    path = _STARTERS / kind / "starter.md"
    if not path.is_file():
        return frozenset()
    _, front, body = path.read_text(encoding="utf-8").split("---\n", 2)
    return frozenset(
        (*_in_blocks(compose(front)), *_OFFERED.findall(front), *(words for words, _ in paragraphs(read_body(body))))
    )


def paragraphs(body: Body) -> Iterator[tuple[str, int]]:
    """The words of each paragraph of a body, on one line, and the line it begins on."""
    for block in body.every(Paragraph):
        yield " ".join(words_of_runs(block.runs).split()), block.line


def _in_blocks(node: yaml.Node | None) -> Iterator[str]:
    if isinstance(node, yaml.ScalarNode) and node.style == ">":
        yield node.value.strip()
    elif isinstance(node, yaml.SequenceNode):
        for item in node.value:
            yield from _in_blocks(item)
    elif isinstance(node, yaml.MappingNode):
        for _, value in node.value:
            yield from _in_blocks(value)
