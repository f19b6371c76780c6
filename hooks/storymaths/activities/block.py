"""Reading one activity from its YAML: its kind and fields, or what is wrong with it and where."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

import yaml
from pydantic import ValidationError

from ..model.document import Fault, Loc
from ..model.problem import Place, Problem
from ..parse.schema_faults import faults_of
from ..parse.suggestion import did_you_mean
from ..parse.yaml_text import BrokenYaml, YamlLocator, load
from .kind import ActivityFields, Kind
from .rules import BROKEN
from .table import KINDS

_LONGEST = 20_000
_DEEPEST = 12


@dataclass(frozen=True, slots=True)
class Block:
    """An activity that was read."""

    kind: Kind[Any]
    fields: ActivityFields
    raw: Mapping[str, Any]
    text: str

    def place(self, loc: Loc) -> Place:
        """Where a value stands in the activity's text, lines counted from 1; the path is empty."""
        return YamlLocator("", self.text).place(loc)


def read_block(text: str) -> Block | list[Problem]:
    """The activity, or every problem with its text. Places are within the text; their path is empty."""
    unusable = _unusable(text)
    if unusable is not None:
        return [unusable]
    try:
        raw, twice = load(text)
    except BrokenYaml as broken:
        return [_unreadable(broken.reason, broken.line, broken.column, broken.fix)]
    if not isinstance(raw, dict):
        message = "The activity has no fields."
        return [BROKEN.problem(Place(""), message, "start with a line such as `kind: balance`.")]
    problems = [
        BROKEN.problem(
            Place("", key.line, key.column),
            f'"{key.key}" is already given above.',
            "keep one of the two and take the other out.",
        )
        for key in twice
    ]
    locator = YamlLocator("", text)
    kind = KINDS.get(str(raw.get("kind")))
    if kind is None:
        return [*problems, _kind_unknown(raw, locator)]
    if unknown := _task_unknown(kind, raw, locator):
        return [*problems, unknown]
    schema = kind.schema_for(raw)
    try:
        fields = schema.model_validate(raw)
    except ValidationError as error:
        faults = _without_other_sorts(faults_of(error, schema, raw, locator))
        return [*problems, *(_in_words(fault, kind, schema) for fault in faults)]
    return problems or Block(kind, fields, raw, text)


def _unusable(text: str) -> Problem | None:
    """Text that would cost too much to read, or that repeats itself by name."""
    if len(text) > _LONGEST:
        message = f"The activity is {len(text):,} characters long; no more than {_LONGEST:,} are read."
        return BROKEN.problem(Place(""), message, "split it into several activities.")
    deep = 0
    try:
        for event in yaml.parse(text, Loader=yaml.CSafeLoader):
            if isinstance(event, yaml.AliasEvent):
                return _unreadable(f"*{event.anchor} stands for another part of the text", *_spot(event))
            deep += isinstance(event, (yaml.MappingStartEvent, yaml.SequenceStartEvent))
            deep -= isinstance(event, (yaml.MappingEndEvent, yaml.SequenceEndEvent))
            if deep > _DEEPEST:
                return _unreadable("lists stand inside lists too many times over", *_spot(event))
    except yaml.YAMLError:
        return None  # ``load`` says it with its place
    return None


def _spot(event: yaml.Event) -> tuple[int, int]:
    mark = event.start_mark
    return (mark.line + 1, mark.column + 1) if mark else (1, 1)


def _unreadable(reason: str, line: int, column: int, fix: str = "") -> Problem:
    return BROKEN.problem(
        Place("", line, column),
        f"The activity could not be read: {reason}.",
        fix
        or "look just before this spot for a colon inside a text (put the text in double quotes), a tab, "
        "or a line that does not line up with its neighbours.",
    )


def _kind_unknown(raw: Mapping[str, Any], locator: YamlLocator) -> Problem:
    fix = f"use one of {', '.join(KINDS)}."
    if "kind" not in raw:
        return BROKEN.problem(Place(""), "The activity does not say of what kind it is.", f"add a line `kind:`; {fix}")
    given = str(raw["kind"])[:40]
    message = f'"{given}" is not a kind of activity.{did_you_mean(given, KINDS)}'
    return BROKEN.problem(locator.place(("kind",)), message, fix)


def _without_other_sorts(faults: Sequence[Fault]) -> list[Fault]:
    """The faults without that of the whole cast, where something inside it is what is wrong."""
    inside_cast = any(fault.field.startswith("cast.") for fault in faults)
    return [fault for fault in faults if not (inside_cast and fault.field == "cast")]


def _task_unknown(kind: Kind[Any], raw: Mapping[str, Any], locator: YamlLocator) -> Problem | None:
    """A task that is named and that the kind does not set."""
    tasks = [schema.task_name for schema in kind.tasks]
    wanted = raw.get(kind.told_by)
    if kind.told_by not in raw or wanted in tasks:
        return None
    given = "nothing" if wanted is None else f'"{str(wanted)[:40]}"'
    message = f'{given} cannot stand after "{kind.told_by}:".{did_you_mean(str(wanted), tasks)}'
    return BROKEN.problem(locator.place((kind.told_by,)), message, f"use one of {', '.join(tasks)}.")


def _is_needed(schema: type[ActivityFields], name: str) -> bool:
    """Whether the task itself cannot do without a field; one of that name may be missing deeper inside."""
    return name in schema.model_fields and schema.model_fields[name].is_required()


def _in_words(fault: Fault, kind: Kind[Any], schema: type[ActivityFields]) -> Problem:
    name = fault.field
    task = f'"{kind.told_by}: {schema.task_name}"' if kind.told_by else "what is asked here"
    if fault.kind == "unknown" and any(name in other.model_fields for other in kind.tasks):
        message = f'"{name}" has no part in {task}, so it would be passed over in silence.'
        return BROKEN.problem(fault.place, message, "leave it out, or ask for something else.")
    if fault.kind == "missing" and kind.told_by and _is_needed(schema, name):
        return BROKEN.problem(fault.place, f'{task} needs "{name}".', f"add {name}.")
    if fault.kind == "unknown":
        return BROKEN.problem(
            fault.place,
            f'"{name}" is not a field of {kind.name}.{did_you_mean(name, fault.known)}',
            f"use one of {', '.join(fault.known)}, or take the line out." if fault.known else "take the line out.",
        )
    if fault.kind == "missing" and name.isdigit():
        return BROKEN.problem(fault.place, "The list here is too short.", f"it needs at least {int(name) + 1} items.")
    if fault.kind == "missing":
        return BROKEN.problem(fault.place, f'The field "{name}" is missing.', f'add a line "{name}:" with its value.')
    return BROKEN.problem(
        fault.place, f'"{name}" {fault.detail}.', fault.fix or "change the value to what the field is for."
    )
