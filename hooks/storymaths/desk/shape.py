"""What a form asks for, read off the schemas: a new field, or a new kind of activity, is asked for with nothing said here."""

from __future__ import annotations

import types
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from typing import Annotated, Any, Literal, Union, get_args, get_origin, get_type_hints

from pydantic import BaseModel
from pydantic.fields import FieldInfo

from ..model.field_notes import notes_of
from ..model.fields import Audience, Claims, Day, PageRange, Year
from ..model.picked import OneOf

Sort = Literal[
    "words", "name", "number", "yes-no", "choice", "year", "pages", "day", "list", "group", "map", "objective", "notation"
]  # fmt: skip
"""How a value is asked for. ``notation`` is what may be of several sorts: it is typed as it stands in the file."""


@dataclass(frozen=True, slots=True)
class Asked:
    """A field of a group: its key in the file, what it is for, and whether the page cannot do without it."""

    key: str
    shape: Shape
    what: str
    needed: bool


@dataclass(frozen=True, slots=True)
class Shape:
    """What sort of value stands somewhere, and what may stand inside it."""

    sort: Sort
    choices: tuple[str, ...] = ()
    of: str = ""
    """The list that a name is one of; empty where any will do."""
    fields: tuple[Asked, ...] = ()
    """Of a group."""
    inner: Shape | None = None
    """Of an item of a list, or of a value of a mapping."""
    keys: Shape | None = None
    """Of a key of a mapping."""

    def under(self, key: str | int) -> Shape | None:
        """What stands under a key, or at a place of a list; None where nothing can."""
        if self.sort == "group":
            return next((asked.shape for asked in self.fields if asked.key == key), None)
        return self.inner


NOTATION = Shape("notation")


def shape_at(shape: Shape, loc: Sequence[str | int]) -> Shape | None:
    """What stands at a path; None where nothing can."""
    at: Shape | None = shape
    for step in loc:
        at = at.under(step) if at else None
    return at


@cache
def group_of(schema: type[BaseModel]) -> Shape:
    """A schema as a group of fields, in its order."""
    hints, notes = get_type_hints(schema, include_extras=True), notes_of(schema)
    return Shape(
        "group",
        fields=tuple(
            Asked(
                about.alias or name,
                shape_of(hints[name]),
                " ".join(notes.get(name, "").replace("``", "").split()),
                about.is_required(),
            )
            for name, about in schema.model_fields.items()
        ),
    )


def shape_of(hint: Any) -> Shape:
    """The type of a field as what is asked for."""
    known: Sequence[tuple[Any, Shape]] = (
        (Claims, Shape("map", keys=Shape("name", of="frameworks"), inner=Shape("list", inner=Shape("objective")))),
        (Year, Shape("year")),
        (PageRange, Shape("pages")),
        (Day, Shape("day")),
    )
    for usual, shape in known:
        if hint == usual:
            return shape
    base, extras = _parted(hint)
    picked = next((extra.of for extra in extras if isinstance(extra, OneOf)), "")
    if picked:
        return Shape("name", of=picked)
    if any(isinstance(extra, Audience) for extra in extras):
        return Shape("words")
    own_reading = any(not isinstance(extra, FieldInfo) and hasattr(extra, "func") for extra in extras)
    return NOTATION if own_reading else _bare(base)


def _parted(hint: Any) -> tuple[Any, tuple[Any, ...]]:
    if get_origin(hint) is Annotated:
        base, *extras = get_args(hint)
        return base, tuple(extras)
    return hint, ()


def _bare(hint: Any) -> Shape:
    origin, inner = get_origin(hint), get_args(hint)
    if origin in (Union, types.UnionType):
        return _either([part for part in inner if part is not type(None)])
    if origin is Literal:
        return Shape("choice", tuple(map(str, inner)))
    if origin is tuple and inner[-1:] == (...,):
        return Shape("list", inner=shape_of(inner[0]))
    if isinstance(origin, type) and issubclass(origin, Mapping):
        return Shape("map", keys=shape_of(inner[0]), inner=shape_of(inner[1]))
    if isinstance(hint, type) and issubclass(hint, BaseModel):
        return group_of(hint)
    simple: Mapping[Any, Shape] = {bool: Shape("yes-no"), int: Shape("number"), str: Shape("name")}
    return simple.get(hint, NOTATION)


def _either(parts: Sequence[Any]) -> Shape:
    """One of several sorts: what all may be, or what the author types as it stands in the file."""
    shapes = [shape_of(part) for part in parts]
    if len(shapes) == 1:
        return shapes[0]
    if all(shape.sort == "choice" for shape in shapes):
        return Shape("choice", tuple(choice for shape in shapes for choice in shape.choices))
    picked = next((part.of for shape in shapes for part in (shape, shape.inner) if part and part.of), "")
    words = tuple(choice for shape in shapes for choice in shape.choices)
    return Shape("notation", words, picked)
