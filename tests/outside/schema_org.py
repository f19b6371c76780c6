"""The schema.org vocabulary as far as our pages use it, and what is wrong with a node by it."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from datetime import date
from typing import Any
from urllib.parse import urlsplit

from .make_schema_org_names import NAMES

TYPES: dict[str, Any] = json.loads(NAMES.read_text(encoding="utf-8"))["types"]
_DURATION = re.compile(r"P(?=.)(\d+D)?(T(?=\d)(\d+H)?(\d+M)?(\d+S)?)?")
"""ISO 8601, as far as hours, minutes and seconds go."""


def kinds_of(name: str) -> set[str]:
    """A type and all it is a kind of."""
    return {name}.union(*(kinds_of(above) for above in TYPES[name]["is_a"]))


def properties_of(types: list[str]) -> dict[str, set[str]]:
    """The properties a thing of these types may have, and what each may hold."""
    found: dict[str, set[str]] = {}
    for name in set().union(*(kinds_of(name) for name in types)):
        for key, holds in TYPES[name]["properties"].items():
            found.setdefault(key, set()).update(holds)
    return found


def types_of(node: dict[str, Any]) -> list[str]:
    given = node["@type"]
    return [given] if isinstance(given, str) else list(given)


def faults(node: dict[str, Any], where: str = "") -> Iterator[str]:
    """What is not in the vocabulary, not of the type, or not of the sort a property holds."""
    types = types_of(node)
    unknown = [name for name in types if name not in TYPES]
    if unknown:
        yield f"{where}: {unknown} not among the names"
        return
    known = properties_of(types)
    for key, value in node.items():
        if key.startswith("@"):
            continue
        if key not in known:
            yield f"{where}: {'/'.join(types)} has no {key}"
            continue
        for item in value if isinstance(value, list) else [value]:
            if isinstance(item, dict):
                if not known[key] & set().union(*(kinds_of(name) for name in types_of(item))):
                    yield f"{where}.{key}: holds {sorted(known[key])}, not {item['@type']}"
                yield from faults(item, f"{where}.{key}")
            elif not any(_is(item, kind) for kind in known[key]):
                yield f"{where}.{key}: {item!r} is none of {sorted(known[key])}"


def _is(value: Any, kind: str) -> bool:
    if isinstance(value, bool):
        return kind == "Boolean"
    if isinstance(value, int):
        return kind in ("Integer", "Number")
    if kind in ("Date", "DateTime"):
        return re.fullmatch(r"\d{4}-\d\d-\d\d", value) is not None and bool(date.fromisoformat(value))
    if kind == "Duration":
        return _DURATION.fullmatch(value) is not None
    if kind == "URL":
        return urlsplit(value).scheme in ("http", "https")
    return kind == "Text"
