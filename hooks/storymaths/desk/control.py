"""The form of a page as data: for each value there is, or could be, where it stands, what it is for and what is in it."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Any

from ..model.document import Loc
from .shape import NOTATION, Asked, Shape, Sort
from .values import shown

_WORDS_IN_A_LINE = 60
_HEADS = 90


@dataclass(frozen=True, slots=True)
class Control:
    """A box of the form, or a group or list of such."""

    id: str
    """Of its element, and what the problems beside it go by."""
    loc: Loc
    label: str
    what: str
    needed: bool
    shape: Shape
    raw: Any
    is_there: bool
    """Whether the file says anything of it."""
    inner: tuple[Control, ...] = ()
    either: Shape | None = None
    """The sorts of which this is one, where its author may choose another."""

    @property
    def sorts(self) -> list[tuple[int, str, bool]]:
        """The sorts there are to choose from: the number of each, what it is called, and whether it is this one."""
        at = self.either.at(self.raw) if self.either else None
        return [
            (number, _called(one), number == at) for number, one in enumerate(self.either.either if self.either else ())
        ]

    @property
    def value(self) -> str:
        """What is in its box."""
        return shown(self.shape, self.raw)

    @property
    def sort(self) -> str:
        """How it is drawn; a value that is not of its sort is shown as it stands in the file."""
        held: Mapping[str, type] = {"list": list, "group": dict, "map": dict}
        expected = held.get(self.shape.sort)
        if self.raw is None or (expected and isinstance(self.raw, expected)):
            return self.shape.sort
        return (
            "notation"
            if expected or (isinstance(self.raw, (dict, list)) and self.shape.sort != "objective")
            else self.shape.sort
        )

    @property
    def rows(self) -> int:
        """How many lines its words need."""
        return max(1, -(-len(self.value) // _WORDS_IN_A_LINE))

    @property
    def where(self) -> str:
        """Its path, for the script."""
        return json.dumps(self.loc, ensure_ascii=False)

    @property
    def head(self) -> str:
        """The first words of a group, by which it is told from its neighbours."""
        said = [
            one.head if one.inner or one.sort in ("list", "group", "map") else one.value
            for one in self.inner
            if one.is_there
        ]
        head = " · ".join(part for part in said if part)
        return head if len(head) <= _HEADS else f"{head[:_HEADS].rsplit(' ', 1)[0]} …"


def id_under(id: str, key: str | int) -> str:
    """The id of what stands under a key; ids hold no blanks."""
    return f"{id}.{re.sub(r'[^0-9A-Za-zÀ-ɏ_.-]+', '_', str(key))}"


def label_of(key: str | int) -> str:
    """A key as a label: ``stem_sentences`` is Stem sentences."""
    words = str(key).replace("_", " ").replace("-", " ")
    return words[:1].upper() + words[1:]


def controls_of(group: Shape, raw: Mapping[Any, Any], id: str, loc: Loc = ()) -> tuple[Control, ...]:
    """The fields of a group, those that are not filled in too."""
    return tuple(_field(asked, raw, id_under(id, asked.key), (*loc, asked.key)) for asked in group.fields)


def _field(asked: Asked, raw: Mapping[Any, Any], id: str, loc: Loc) -> Control:
    value, there = raw.get(asked.key), asked.key in raw
    return control(asked.shape, value, id, loc, label_of(asked.key), asked.what, asked.needed, there)


def control(
    shape: Shape, raw: Any, id: str, loc: Loc, label: str, what: str = "", needed: bool = False, there: bool = True
) -> Control:
    """A value with all that stands inside it."""
    if shape.sort == "either":
        return replace(control(shape.now(raw), raw, id, loc, label, what, needed, there), either=shape)
    made = Control(id, loc, label, what, needed, shape, raw, there)
    inner: tuple[Control, ...] = ()
    match made.sort:
        case "group":
            inner = controls_of(shape, raw or {}, id, loc)
        case "list":
            inner = tuple(_items(shape.inner or NOTATION, raw or [], made))
        case "map":
            inner = tuple(_values(shape.inner or NOTATION, raw or {}, made))
    return replace(made, inner=inner)


def _items(shape: Shape, raw: list[Any], of: Control) -> Iterator[Control]:
    for at, item in enumerate(raw):
        yield control(shape, item, id_under(of.id, at), (*of.loc, at), f"{singular(of.label)} {at + 1}", needed=True)


def _values(shape: Shape, raw: Mapping[Any, Any], of: Control) -> Iterator[Control]:
    for key, item in raw.items():
        yield control(shape, item, id_under(of.id, key), (*of.loc, key), label_of(key), needed=True)


_CALLED: Mapping[Sort, str] = {
    "number": "a number", "yes-no": "yes or no", "words": "words", "name": "text", "list": "a list",
    "group": "with values of its own", "map": "with values of its own", "notation": "written out",
}  # fmt: skip


def _called(shape: Shape) -> str:
    """A sort as it stands among others to choose from; a literal is called what it is."""
    return shape.choices[0] if shape.choices else _CALLED.get(shape.sort, shape.sort)


def singular(label: str) -> str:
    """What one item of a list is called; the label itself where no other word is plain."""
    return label[:-1] if label.endswith("s") and not label.endswith("ss") else label
