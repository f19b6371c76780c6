"""The fields of a kind of page, and a finished page of each kind to show them by."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from pydantic import BaseModel

from ...model.field_notes import notes_of
from ...parse.schema_faults import schema_in
from ..page_kinds.table import PAGE_KINDS

_FIELD = re.compile(r"^(\w+):.*\n(?:[ \n].*\n?)*", re.MULTILINE)


@dataclass(frozen=True, slots=True)
class FieldLine:
    """A field as the guide tells of it."""

    name: str
    needed: bool
    note: str
    inside: tuple[FieldLine, ...]
    """The fields of what it holds."""


def fields_of(schema: type[BaseModel]) -> Iterator[FieldLine]:
    """Every field of a schema, with those within it."""
    notes = notes_of(schema)
    for name, field in schema.model_fields.items():
        within = schema_in(field.annotation)
        inside = tuple(fields_of(within)) if within else ()
        yield FieldLine(field.alias or name, field.is_required(), notes.get(name, ""), inside)


def example_page(kind: str) -> str:
    """A finished page of a kind, which the tests hold to all rules."""
    return PAGE_KINDS[kind].example.read_text(encoding="utf-8")


def examples_of(kind: str) -> dict[str, str]:
    """What stands in that page for each field of its front matter, as it is written."""
    front = example_page(kind).split("---\n")[1]
    return {match[1]: match[0].rstrip() for match in _FIELD.finditer(front)}
