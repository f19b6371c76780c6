"""An activity that is begun: its kind and task, and a place for each field the task cannot do without."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from ..activities.kind import ActivityFields, Kind
from ..activities.table import KINDS
from ..edits.edit import EditRefused, Value
from ..edits.writing import after_key
from ..parse.yaml_text import load
from .shape import group_of
from .values import blank

_KEPT = ("id", "title", "ask", "cast", "fact")
_NOT_BEGUN_WITH = ("years", "answers")
_TO_FILL = "…"
_WIDTH = 120


@dataclass(frozen=True, slots=True)
class Task:
    """A task an author may choose: its kind, its name, and what it is in a sentence."""

    kind: str
    name: str
    says: str


def tasks() -> Iterator[Task]:
    """Every task of every kind, in the order of the kinds."""
    for kind in KINDS.values():
        for schema in kind.tasks:
            yield Task(kind.name, schema.task_name, _says(kind, schema))


def _says(kind: Kind[Any], schema: type[ActivityFields]) -> str:
    own = (schema.__doc__ or "").strip().split("\n\n")[0].replace("``", "").replace("\n", " ")
    return kind.says if len(kind.tasks) == 1 else " ".join(own.split())


def begin_activity(kind: str, task: str, old: Mapping[str, Any] | None = None) -> str:
    """The data of an activity of a task, with what of an old one it can keep. Raises ``EditRefused``."""
    chosen = KINDS.get(kind)
    schema = next((one for one in chosen.tasks if task in ("", one.task_name)), None) if chosen else None
    if chosen is None or schema is None:
        raise EditRefused("There is no such kind of activity.")
    kept = {key: value for key, value in (old or {}).items() if key in _KEPT and key in schema.model_fields}
    data: dict[str, Value] = {"kind": kind, "title": "", **kept}
    for asked in group_of(schema).fields:
        if asked.key in data or asked.key == "kind":
            continue
        if asked.key == chosen.told_by:
            data[asked.key] = task
        elif asked.needed:
            data[asked.key] = blank(asked.shape)
    if chosen.schema_for(data) is not schema:
        data = {**_told_apart(chosen, schema, data), **kept}
    return "".join(f"{key}:{after_key(value, 0, _WIDTH)}\n" for key, value in data.items())


def _told_apart(kind: Kind[Any], schema: type[ActivityFields], data: dict[str, Value]) -> dict[str, Value]:
    """Data that say which task is meant, where that is told by what is filled in: with one more field, or an example's."""
    for asked in group_of(schema).fields:
        tried = {**data, asked.key: blank(asked.shape) or _TO_FILL}
        if kind.schema_for(tried) is schema:
            return tried
    for text in (kind.example, *kind.more_examples):
        example: dict[str, Value] = load(text)[0]
        if kind.schema_for(example) is schema:
            return {key: value for key, value in example.items() if key not in _NOT_BEGUN_WITH}
    return data
