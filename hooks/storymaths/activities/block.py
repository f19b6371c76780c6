"""Reading one activity from its YAML: its kind and fields, or what is wrong with it and where."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

import yaml
from pydantic import ValidationError

from ..check.suggestion import did_you_mean
from ..model.document import Fault, Loc
from ..model.problem import Place, Problem
from ..parse.schema_faults import faults_of
from ..parse.yaml_text import BrokenYaml, YamlLocator, load
from .kind import ActivityFields, Kind
from .rules import BROKEN
from .table import KINDS

_LONGEST = 20_000
_DEEPEST = 12
_SHOULD = "; it should be "
_UNION_STEPS = frozenset({"bool", "int", "str", "float", "none"})
"""Steps a validator adds to the way to a value for each sort it tried; they stand for nothing in the text."""


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
        return [_unreadable(broken.reason, broken.line, broken.column)]
    if not isinstance(raw, dict):
        message = "The activity is not a list of `key: value` lines."
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
    odd = _odd_key(raw, ())
    if odd is not None:
        place = locator.place((*odd, "[key]"))
        return [
            *problems,
            BROKEN.problem(place, f'"{str(odd[-1])[:40]}" is not a name.', "take the square bracket out."),
        ]
    try:
        fields = kind.fields.model_validate(raw)
    except ValidationError as error:
        faults = _one_a_place(faults_of(error, kind.fields, raw, locator), raw)
        return [*problems, *(_in_words(fault, kind.name) for fault in faults)]
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


def _unreadable(reason: str, line: int, column: int) -> Problem:
    return BROKEN.problem(
        Place("", line, column),
        f"The activity could not be read: {reason}.",
        "look just before this spot for a colon inside a text (put the text in double quotes), a tab, "
        "or a line that does not line up with its neighbours.",
    )


def _kind_unknown(raw: Mapping[str, Any], locator: YamlLocator) -> Problem:
    fix = f"use one of {', '.join(KINDS)}."
    if "kind" not in raw:
        return BROKEN.problem(Place(""), "The activity does not say of what kind it is.", f"add a line `kind:`; {fix}")
    given = str(raw["kind"])[:40]
    message = f'"{given}" is not a kind of activity.{did_you_mean(given, KINDS)}'
    return BROKEN.problem(locator.place(("kind",)), message, fix)


def _odd_key(value: Any, loc: Loc) -> Loc | None:
    """The way to a key that holds a square bracket, which the reading of faults would take for a validator's step."""
    if isinstance(value, dict):
        for key, inner in value.items():
            here = (*loc, key if isinstance(key, int) else str(key))
            found = here if "[" in str(key) else _odd_key(inner, here)
            if found is not None:
                return found
    elif isinstance(value, list):
        return next(filter(None, (_odd_key(inner, (*loc, index)) for index, inner in enumerate(value))), None)
    return None


def _one_a_place(faults: Sequence[Fault], raw: Mapping[str, Any]) -> list[Fault]:
    """One fault for each value: where a field takes several sorts of value, each sort refused it in turn."""
    kept: dict[tuple[int, int], Fault] = {}
    inside_cast = isinstance(raw.get("cast"), (dict, list)) and any(f.field.startswith("cast.") for f in faults)
    for fault in faults:
        if fault.field == "cast" and inside_cast:
            continue  # a sort of cast this one was not meant to be
        key = (fault.place.line, fault.place.column)
        kept[key] = _joined(kept[key], fault) if key in kept else fault
    return list(kept.values())


def _joined(one: Fault, other: Fault) -> Fault:
    """What two sorts said of the same value, as one."""
    given, should, first = one.detail.partition(_SHOULD)
    _, too, second = other.detail.partition(_SHOULD)
    if one.kind != "mistyped" or other.kind != "mistyped" or not should or not too or second in first:
        return other if other.kind == "unknown" else one
    return replace(one, detail=f"{given}{_SHOULD}{first} or {second}")


def _in_words(fault: Fault, kind: str) -> Problem:
    steps = fault.field.split(".")
    while len(steps) > 1 and steps[-1] in _UNION_STEPS:
        steps.pop()
    name = ".".join(steps)
    if fault.kind == "unknown":
        return BROKEN.problem(
            fault.place,
            f'"{name}" is not a field of {kind}.{did_you_mean(name, fault.known)}',
            f"use one of {', '.join(fault.known)}, or take the line out." if fault.known else "take the line out.",
        )
    if fault.kind == "missing" and name.isdigit():
        return BROKEN.problem(fault.place, "The list here is too short.", f"it needs at least {int(name) + 1} items.")
    if fault.kind == "missing":
        return BROKEN.problem(fault.place, f'The field "{name}" is missing.', f'add a line "{name}:" with its value.')
    return BROKEN.problem(fault.place, f'"{name}" {fault.detail}.', "change the value to what the field is for.")
