"""What a form asks for, read off the schemas: a new field, or a new kind of activity, is asked for with nothing said here."""

from __future__ import annotations

import types
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from typing import Annotated, Any, Literal, Union, get_args, get_origin, get_type_hints

from pydantic import BaseModel, BeforeValidator, PlainValidator
from pydantic.fields import FieldInfo
from pydantic_core import PydanticUndefined

from ..model.field_notes import notes_of
from ..model.fields import Audience, Claims, Day, PageRange, Year
from ..model.picked import OneOf

Sort = Literal[
    "words", "name", "number", "yes-no", "choice", "year", "pages", "day", "list", "group", "map", "objective", "either",
    "notation",
]  # fmt: skip
"""How a value is asked for. ``either`` is one of several sorts; ``notation`` is typed as it stands in the file."""
_HELD: Mapping[Sort, type] = {"yes-no": bool, "number": int, "list": list, "group": dict, "map": dict}


_SAYS_WHAT = (BeforeValidator, PlainValidator)


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
    either: tuple[Shape, ...] = ()
    """The sorts of which it is one, each literal a choice by itself."""

    def under(self, key: str | int) -> Shape | None:
        """What stands under a key, or at a place of a list; None where nothing can."""
        if self.sort == "either":
            holding = ("list",) if isinstance(key, int) else ("group", "map")
            return next((one.under(key) for one in self.either if one.sort in holding), None)
        if self.sort == "group":
            return next((asked.shape for asked in self.fields if asked.key == key), None)
        return self.inner

    def fits(self, raw: Any) -> bool:
        """Whether a value as it stands in the file is of this sort."""
        if self.sort == "choice":
            return isinstance(raw, str) and raw in self.choices
        if self.sort == "notation":
            return True
        held = _HELD.get(self.sort, str)
        return isinstance(raw, held) and (held is not int or not isinstance(raw, bool))

    def at(self, raw: Any) -> int | None:
        """Which of its sorts a value is of; None where there is no value, or it is of none."""
        return None if raw is None else next((at for at, one in enumerate(self.either) if one.fits(raw)), None)

    def now(self, raw: Any) -> Shape:
        """The one sort that a value is of."""
        if self.sort != "either":
            return self
        at = self.at(raw)
        return NOTATION if at is None else self.either[at]


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
    reading = [extra for extra in extras if not isinstance(extra, FieldInfo) and hasattr(extra, "func")]
    if not reading:
        return _bare(base)
    # What is read in a way of its own says itself what may be written, where that is more than a text.
    written = next((extra.json_schema_input_type for extra in reading if isinstance(extra, _SAYS_WHAT)), Any)
    return NOTATION if written in (Any, PydanticUndefined) else shape_of(written)


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
    """One of several sorts: a literal before words, which it would pass for, and what is typed as it stands last."""
    shapes = [shape_of(part) for part in parts]
    if len(shapes) == 1:
        return shapes[0]
    literals = tuple(choice for shape in shapes if shape.sort == "choice" for choice in shape.choices)
    others = sorted((shape for shape in shapes if shape.sort != "choice"), key=lambda shape: shape.sort == "notation")
    if not others:
        return Shape("choice", literals)
    return Shape("either", either=(*(Shape("choice", (literal,)) for literal in literals), *dict.fromkeys(others)))
