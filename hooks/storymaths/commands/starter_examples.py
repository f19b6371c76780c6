"""A finished example beside each text that a starter leaves to its author: the words of a finished page."""

from __future__ import annotations

import re
from collections import Counter
from typing import Any

from ..parse.yaml_text import load

_LINE = re.compile(r"^(?P<indent> *)(?P<hyphens>(?:- )*)(?:(?P<key>\w+):)?(?P<left> ?>-)?")


def with_examples(example: str, starter: str) -> str:
    """A starter with a note above each text that is to be written: ``# Such as: …``."""
    _, front, body = starter.split("---\n", 2)
    data, _ = load(example.split("---\n")[1])
    path: list[tuple[int, str]] = []
    met: Counter[tuple[str, ...]] = Counter()
    lines: list[str] = []
    for line in front.splitlines():
        found = _LINE.match(line)
        if found and (found["key"] or found["left"]) and not line.lstrip().startswith("#"):
            inner = len(found["indent"] + found["hyphens"])
            path = [step for step in path if step[0] < inner]
            if found["key"]:
                path.append((inner, found["key"]))
            keys = tuple(key for _, key in path)
            example = _at(data, keys, met[keys]) if found["left"] else ""
            met[keys] += bool(found["left"])
            if example:
                lines.append(f"{found['indent']}# Such as: {example}")
        lines.append(line)
    return "---\n" + "\n".join(lines) + "\n---\n" + body


def _at(data: Any, keys: tuple[str, ...], place: int) -> str:
    """The text that stands under some keys, in the first entry of each list on the way; empty for none."""
    for key in keys:
        data = data[0] if isinstance(data, list) else data
        data = data.get(key) if isinstance(data, dict) else None
    if isinstance(data, list):
        data = data[place] if place < len(data) else None
    return " ".join(data.split()) if isinstance(data, str) else ""
