"""What a schema refused, as faults with places, in words a teacher can use."""

from __future__ import annotations

import copy
import types
import typing
from collections.abc import Mapping
from dataclasses import replace
from typing import Any, get_args, get_origin

from pydantic import BaseModel, ValidationError
from pydantic_core import ErrorDetails

from ..model.address import slug
from ..model.document import Fault, Loc, Locator
from ..model.fields import ID, LISTED_ID
from ..model.imprint import IRI
from ..model.moved import SOURCE
from ..model.program_version import PROGRAM_VERSION
from ..model.series import VERSION
from .suggestion import did_you_mean

_SHOULD = "; it should be "
_WORDS = {
    "string_type": "should be words",
    "string_too_short": "is empty",
    "int_type": "should be a whole number",
    "int_parsing": "should be a whole number",
    "int_from_float": "should be a whole number",
    "float_type": "should be a number",
    "bool_type": "should be true or false",
    "bool_parsing": "should be true or false",
    "tuple_type": "should be a list",
    "mapping_type": "should be fields, each with its value",
    "model_type": "should be fields, each with its value",
    "dict_type": "should be fields, each with its value",
    "too_short": "needs at least one item",
}
_MENDS = {
    "tuple_type": 'put each entry on a line of its own below, after "- "; or all within [ ] with commas between.',
    "mapping_type": "put each field on a line of its own below, two spaces further in.",
    "int_type": "write it in figures, such as 5.",
    "int_parsing": "write it in figures, such as 5.",
    "bool_type": "write true or false.",
    "literal_error": "write one of these.",
    "string_pattern_mismatch": "write it in this way.",
    "value_error": "write it in this way.",
    "too_short": "write one, or take the line out if the page can do without.",
}
_STRAIGHTEN = (
    'type straight quotes in their place all along this line, as in "{}". Word processors make curly ones; write in a '
    "plain text editor, or with storymaths desk."
)
_MENDS |= dict.fromkeys(("model_type", "dict_type"), _MENDS["mapping_type"])


def faults_of(error: ValidationError, schema: type[BaseModel], raw: Mapping[str, Any], locator: Locator) -> list[Fault]:
    """Each place the schema refused something, once."""
    faults: dict[tuple[int, int], Fault] = {}
    for detail in error.errors(include_url=False, include_context=True):
        if _follows_from_its_items(detail):
            continue
        fault = _fault(detail, schema, raw, locator)
        # A line of curly quotes is one slip.
        at = (fault.place.line, 0 if _is_in_curly_quotes(detail["input"]) else fault.place.column)
        faults[at] = _joined(faults[at], fault) if at in faults else fault
    return _causes(list(faults.values()))


def _causes(faults: list[Fault]) -> list[Fault]:
    """The faults without those that follow from another of the same holder: one word put right mends both."""
    unknown = [fault for fault in faults if fault.kind == "unknown"]
    return [
        fault
        for fault in faults
        if fault.kind == "unknown"
        or not any(_holder(other) == _holder(fault) and _explains(other, fault) for other in unknown)
    ]


def _holder(fault: Fault) -> str:
    """What a field stands in; empty for the page or activity itself."""
    return fault.detail.rpartition(".")[0] if fault.kind in ("unknown", "missing") else fault.field.rpartition(".")[0]


def _explains(unknown: Fault, other: Fault) -> bool:
    """Whether a field that is not known is why another is missing, or holds too little."""
    if other.kind == "missing":
        return unknown.field.startswith(f"{other.field} ") or f'"{other.field}"' in did_you_mean(
            unknown.field, unknown.known
        )
    return unknown.field[:1].isdecimal()


def _follows_from_its_items(detail: ErrorDetails) -> bool:
    """Whether a list is called too short only because an item of it was refused, which is told by itself."""
    given = detail["input"]
    return detail["type"] == "too_short" and isinstance(given, list) and len(given) >= detail["ctx"]["min_length"]


def _joined(one: Fault, other: Fault) -> Fault:
    """Two faults at one place as one: where a field takes several sorts of value, each refused it in turn."""
    given, should, first = one.detail.partition(_SHOULD)
    _, too, second = other.detail.partition(_SHOULD)
    if one.kind != "mistyped" or other.kind != "mistyped" or not should or not too or second in first:
        return other if other.kind == "unknown" else one
    return replace(one, detail=f"{given}{_SHOULD}{first} or {second}")


def without_unknown(raw: Mapping[str, Any], error: ValidationError) -> dict[str, Any]:
    """A copy of ``raw`` without the keys the schema does not know."""
    kept: dict[str, Any] = copy.deepcopy(dict(raw))
    for detail in error.errors(include_url=False):
        if detail["type"] == "extra_forbidden":
            holder: Any = kept
            for step in _in_file(detail, raw)[0][:-1]:
                holder = holder[step]
            holder.pop(detail["loc"][-1], None)
    return kept


def _fault(detail: ErrorDetails, schema: type[BaseModel], raw: Mapping[str, Any], locator: Locator) -> Fault:
    loc, name = _in_file(detail, raw)
    if detail["type"] == "invalid_key":
        return Fault("unknown", locator.place((*loc, "[key]")), str(loc[-1]), name)
    if detail["type"] == "extra_forbidden":
        return Fault("unknown", locator.place((*loc, "[key]")), str(loc[-1]), name, keys_at(schema, loc[:-1]))
    if detail["type"] == "missing":
        return Fault("missing", locator.place(loc[:-1]), str(loc[-1]), name)
    if _is_in_curly_quotes(detail["input"]):
        told = f"is {detail['input']}, in curly quotes; only straight ones are read"
        return Fault("mistyped", locator.place(loc), name, told, fix=_STRAIGHTEN.format(detail["input"][1:-1]))
    return Fault("mistyped", locator.place(loc), name, _in_words(detail), fix=_mend(detail))


def _is_in_curly_quotes(given: object) -> bool:
    return isinstance(given, str) and len(given) > 1 and given[0] in "“‘" and given[-1] in "”’"


def _mend(detail: ErrorDetails) -> str:
    """What mends a value of the wrong sort; empty where that is not known."""
    given = detail["input"]
    if given is None:
        return "write it after the colon, or take the line out if the page can do without."
    if detail["type"] != "string_type":
        return _MENDS.get(detail["type"], "")
    if isinstance(given, list):
        return "write it after the colon, without a hyphen or [ ]."
    return "" if isinstance(given, dict) else f'put it in double quotes: "{"…" if isinstance(given, bool) else given}".'


def _in_file(detail: ErrorDetails, raw: Mapping[str, Any]) -> tuple[Loc, str]:
    """The way to what was refused as it stands in the file, and in words: list items are counted from 1.

    Steps such as ``function-before[…]`` are the validator's own and stand for nothing in the file.
    """
    loc: list[str | int] = []
    named: list[str] = []
    value: Any = raw
    last = len(detail["loc"]) - 1
    for index, step in enumerate(detail["loc"]):
        if isinstance(value, Mapping) and step in value:
            value = value[step]
            named.append(str(step))
        elif isinstance(value, list) and isinstance(step, int) and step < len(value):
            value = value[step]
            named.append(str(step + 1))
        elif index == last and detail["type"] in ("missing", "extra_forbidden"):
            named.append(str(step))
        elif step != "[key]":
            continue
        loc.append(step)
    return tuple(loc), ".".join(named)


def _in_words(detail: ErrorDetails) -> str:
    kind, given = detail["type"], _shown(detail["input"])
    context = detail.get("ctx", {})
    if kind == "value_error":
        return f"is {given}: {context['error']}"
    if kind == "literal_error":
        return f"is {given}; it should be one of: {context['expected']}"
    if kind in ("greater_than_equal", "less_than_equal"):
        bound = "at least" if kind.startswith("greater") else "at most"
        return f"is {given}; it should be {bound} {context.get('ge', context.get('le')):,}"
    if kind == "string_pattern_mismatch":
        return f"is {given}{_SHOULD}{_form(str(context['pattern']), str(detail['input']))}"
    if kind in _WORDS:
        return f"is {given}; it {_WORDS[kind]}" if _WORDS[kind].startswith("should") else _WORDS[kind]
    return f"is {given}: {detail['msg'][0].lower()}{detail['msg'][1:]}"


def _form(pattern: str, given: str) -> str:
    """What a pattern asks for, in words."""
    words = {
        ID: "a name in small letters and digits, with hyphens between words",
        LISTED_ID: "a name in small letters and digits, with hyphens between words",
        VERSION: 'two numbers with a dot between, in quotes, such as "1.0"',
        PROGRAM_VERSION: "a version of the program, three numbers with dots between, such as 0.2.0",
        SOURCE: "the name of a page inside content/, such as books/old-name/session-1.md",
        IRI: "a whole web address that begins https://",
    }
    such_as = slug(given) if pattern in (ID, LISTED_ID) and any(letter.isalpha() for letter in given) else ""
    return words.get(pattern, "written as it is in the other entries") + (f', such as "{such_as}"' if such_as else "")


def _shown(value: Any) -> str:
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, (dict, list, tuple)):
        return "fields with values" if isinstance(value, dict) else "a list"
    if value is None:
        return "empty"
    text = str(value)
    return f'"{text[:40]}…"' if len(text) > 40 else f'"{text}"'


def keys_at(schema: Any, loc: tuple[str | int, ...]) -> tuple[str, ...]:
    """The keys a schema would take at ``loc``."""
    for step in loc:
        model = schema_in(schema)
        if model is None:
            return ()
        if isinstance(step, str) and schema is model:
            field = next((f for n, f in model.model_fields.items() if (f.alias or n) == step), None)
            if field is None:
                return ()
            schema = field.annotation
        else:
            schema = model
        if isinstance(step, int):
            schema = schema_in(schema)
    model = schema_in(schema)
    return tuple(f.alias or name for name, f in model.model_fields.items()) if model else ()


def schema_in(annotation: Any) -> Any:
    """The schema inside a list, mapping, union or annotation; None if there is none."""
    if (
        isinstance(annotation, type)
        and not isinstance(annotation, types.GenericAlias)
        and issubclass(annotation, BaseModel)
    ):
        return annotation
    if get_origin(annotation) is typing.Literal:
        return None
    for inner in reversed(get_args(annotation)):
        found = schema_in(inner)
        if found is not None:
            return found
    return None
