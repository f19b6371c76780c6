"""Values as they stand in a box of the form, and what an author means who types there."""

from __future__ import annotations

import datetime
import json
from collections.abc import Mapping, Sequence
from typing import Any

import yaml

from ..edits.edit import Value
from ..model.fields import RECEPTION, year_name
from ..parse.yaml_text import BrokenYaml, load
from .shape import Shape

YES, NO = "yes", "no"


def shown(shape: Shape, raw: Any) -> str:
    """A value as it stands in its box; empty where there is none."""
    if raw is None:
        return ""
    if isinstance(raw, bool):
        return YES if raw else NO
    if shape.sort == "objective" and isinstance(raw, Mapping) and len(raw) == 1:
        ((code, parts),) = raw.items()
        return f"{code}: {', '.join(map(str, parts)) if isinstance(parts, list) else parts}"
    if isinstance(raw, datetime.date):
        return raw.isoformat()
    if isinstance(raw, str) and shape.sort == "notation" and meant(shape, raw) != raw:
        return json.dumps(raw, ensure_ascii=False)  # words that would be taken for something else
    return raw if isinstance(raw, str) else _as_notation(raw)


def _as_notation(raw: Any) -> str:
    """A list of plain words or numbers as people write it, with commas between; all else as YAML has it on one line."""
    if isinstance(raw, Sequence) and raw:
        line = ", ".join(map(str, raw))
        if _listed(line) == list(raw):
            return line
    return (
        str(yaml.safe_dump(raw, default_flow_style=True, allow_unicode=True, width=10**6, sort_keys=False))
        .removesuffix("\n...\n")
        .rstrip("\n")
    )


def _listed(line: str) -> list[Any] | None:
    """What a line with commas lists; None where it may be meant otherwise."""
    parts = [part.strip() for part in line.split(",")]
    if len(parts) < 2 or any(sign in line for sign in "[]{}\"'#:") or not all(parts):
        return None
    return [_scalar(part) for part in parts]


def meant(shape: Shape, text: str) -> Value:
    """What was typed, as the file has it. What cannot be read as meant stays words, and the check says what is wrong."""
    text = text.replace("\r\n", "\n").strip()
    match shape.sort:
        case "number":
            return int(text) if text.removeprefix("-").isdecimal() and len(text) < 12 else text
        case "year":
            return int(text) if text.isdecimal() else text
        case "pages":
            return int(text) if text.isdecimal() and len(text) < 6 else text
        case "yes-no":
            return {YES: True, NO: False}.get(text, text)
        case "day":
            return _day(text)
        case "objective":
            return _objective(text)
        case "notation":
            listed = _listed(text)
            return listed if listed is not None else _scalar(text)
        case "words":
            return " ".join(text.split("\n")) if "\n\n" not in text else text
    return text


def _day(text: str) -> Value:
    try:
        return datetime.date.fromisoformat(text)
    except ValueError:
        return text


def _objective(text: str) -> Value:
    code, colon, parts = text.partition(":")
    if not colon or not parts.strip():
        return code.strip()
    named: list[Value] = [part.strip() for part in parts.split(",") if part.strip()]
    return {code.strip(): named[0] if named == ["all"] else named}


def _scalar(text: str) -> Any:
    try:
        read, twice = load(text)
    except BrokenYaml:
        return text
    is_time = isinstance(read, int) and ":" in text  # 8:00, of which YAML 1.1 makes 480
    return text if twice or read is None or is_time or not _has_names(read) else read


def _has_names(value: Any) -> bool:
    """Whether every key in a value is a word or a number: YAML makes an empty one of a mere question mark."""
    if isinstance(value, dict):
        return all(isinstance(key, (str, int)) and _has_names(inner) for key, inner in value.items())
    return not isinstance(value, list) or all(map(_has_names, value))


def blank(shape: Shape) -> Value:
    """What stands where something is begun: whatever it cannot do without, with nothing in it yet."""
    match shape.sort:
        case "group":
            return {asked.key: blank(asked.shape) for asked in shape.fields if asked.needed}
        case "list":
            return [blank(shape.inner)] if shape.inner and shape.inner.sort != "objective" else []
        case "map":
            return {}
        case "choice":
            return shape.choices[0]
        case "number" | "pages":
            return 1
        case "year":
            return 1
        case "yes-no":
            return True
        case "either":
            return blank(shape.either[0]) if shape.either[0].sort == "choice" else ""
    return ""


def turned(shape: Shape, raw: Any) -> Value:
    """A value as one of another sort: what was there, where it can be read so."""
    kept = meant(shape, shown(shape, raw)) if raw is not None and not isinstance(raw, (dict, list)) else None
    return kept if kept and shape.fits(kept) else blank(shape)


def years(known: Sequence[int]) -> list[tuple[str, str]]:
    """School years as an author writes them, with what schools call them."""
    return [("Reception" if year == RECEPTION else str(year), year_name(year)) for year in known]
