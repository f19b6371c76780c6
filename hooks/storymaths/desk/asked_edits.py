"""What was asked of the desk, as changes to the text of a page."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from ..edits.edit import (
    AddItem,
    AddSection,
    Edit,
    EditRefused,
    InBlock,
    MoveItem,
    MoveSection,
    RemoveItem,
    RemoveSection,
    RenameSection,
    SetBlock,
    SetSection,
    SetValue,
    Value,
    ValueEdit,
)
from ..model.document import Loc
from .asked import (
    Add,
    Asked,
    BeginActivity,
    InForm,
    Move,
    PutActivity,
    Remove,
    RemoveActivity,
    Section,
    Turn,
    Type,
    Write,
    WriteActivity,
)
from .new_activity import begin_activity
from .page_text import ActivityForm, PageText
from .sections import with_activity, with_words
from .shape import NOTATION, Shape, group_of, shape_at
from .steps import with_sections
from .values import blank, meant, turned


def edits_for(asked: Asked, page: PageText) -> Sequence[Edit]:
    """The changes to the page's text. Raises ``EditRefused`` for what its form does not have."""
    match asked:
        case Type() | Turn() | Add() | Remove() | Move():
            return _in_form(asked, page)
        case Write(section=section, part=part, text=text):
            _hold(page, section, part, activity=False)
            return [SetSection(*with_words(page.body, section, part, text))]
        case RemoveActivity(section=section, part=part):
            _hold(page, section, part, activity=True)
            return [SetSection(*with_words(page.body, section, part, ""))]
        case BeginActivity(section=section, part=part, kind=kind, task=task):
            _hold(page, section, part)
            return [SetSection(*with_activity(page.body, section, part, begin_activity(kind, task)))]
        case PutActivity(section=section, text=text):
            _hold(page, section, 0)
            last = len(page.sections[section].parts) - 1
            return [SetSection(*with_activity(page.body, section, last, text))]
        case WriteActivity(activity=number, text=text, kind=kind, task=task):
            old = _activity(page, number).raw or {}
            return [SetBlock(number, begin_activity(kind, task, old) if kind else text)]
        case Section():
            return [_section(asked, page)]


def _in_form(asked: Type | Turn | Add | Remove | Move, page: PageText) -> list[Edit]:
    shape, raw = _form(asked, page)
    edits = _value_edits(asked, shape, raw)
    if asked.activity is None:
        return with_sections(edits, page)
    return [InBlock(asked.activity, edit) for edit in edits]


def _form(asked: InForm, page: PageText) -> tuple[Shape, Any]:
    if asked.activity is None:
        if page.schema is None or page.raw is None:
            raise EditRefused("The page cannot be read: put its text right first.")
        return group_of(page.schema), page.raw
    form = _activity(page, asked.activity)
    if form.shape is None:
        raise EditRefused("The activity cannot be read: put its text right first.")
    return form.shape, form.raw


def _activity(page: PageText, number: int) -> ActivityForm:
    if number not in page.activities:
        raise EditRefused(f"There is no activity {number + 1} in the page any more.")
    return ActivityForm(page.activities[number])


def _value_edits(asked: Type | Turn | Add | Remove | Move, form: Shape, raw: Any) -> list[ValueEdit]:
    loc = asked.loc
    usual = shape_at(form, loc)
    shape = usual.now(_value_at(raw, loc)) if usual else None
    match asked:
        case Turn(sort=sort):
            return _turn(loc, usual, sort, form, raw)
        case Remove():
            return [RemoveItem(loc)]
        case Move(to=to):
            return [MoveItem(loc, to)]
        case Add(key=key, text=text):
            if shape is None or shape.inner is None:
                raise EditRefused("Nothing can be added there.")
            value = blank(shape.inner) if text is None else meant(shape.inner, text)
            if shape.sort == "map":
                return [SetValue((*loc, _key(shape, key or "")), value)]
            return [AddItem(loc, value)]
        case Type(text=text):
            # What an empty box of several sorts is filled with says itself of which it is.
            unsaid = usual is not None and usual.sort == "either" and not _value_at(raw, loc)
            return _type(loc, text, NOTATION if unsaid else shape or NOTATION, form, raw)


def _type(loc: Loc, text: str, shape: Shape, form: Shape, raw: Any) -> list[ValueEdit]:
    old = _value_at(raw, loc)
    if not text.strip() and not _is_needed(form, loc):
        return [RemoveItem(loc)] if _is_there(raw, loc) else []
    as_it_stands = shape.sort in ("list", "group", "map") or (
        isinstance(old, (dict, list)) and shape.sort != "objective"
    )
    value: Value = meant(NOTATION if as_it_stands else shape, text)
    return [SetValue(loc, value)]


def _turn(loc: Loc, usual: Shape | None, sort: int | None, form: Shape, raw: Any) -> list[ValueEdit]:
    if usual is None or (sort is not None and sort >= len(usual.either)):
        raise EditRefused("There is no such sort of value there.")
    if sort is None:
        return _type(loc, "", NOTATION, form, raw)
    return [SetValue(loc, turned(usual.either[sort], _value_at(raw, loc)))]


def _key(shape: Shape, key: str) -> str | int:
    """A key of a mapping, as the file has it."""
    read = meant(shape.keys, key.strip()) if shape.keys else key.strip()
    if not isinstance(read, (str, int)) or read == "":
        raise EditRefused("A name is needed first.")
    return read


def _is_needed(form: Shape, loc: Loc) -> bool:
    """Whether the page cannot do without what stands at a path; an item of a list can be taken out, but is not by emptying it."""
    holder = shape_at(form, loc[:-1])
    if holder is None or holder.sort != "group":
        return True
    return any(asked.key == loc[-1] and asked.needed for asked in holder.fields)


def _is_there(raw: Any, loc: Loc) -> bool:
    for step in loc:
        if isinstance(raw, list):
            if not isinstance(step, int) or step >= len(raw):
                return False
        elif not isinstance(raw, dict) or step not in raw:
            return False
        raw = raw[step]
    return True


def _value_at(raw: Any, loc: Loc) -> Any:
    if not _is_there(raw, loc):
        return None
    for step in loc:
        raw = raw[step]
    return raw


def _hold(page: PageText, section: int, part: int, activity: bool | None = None) -> None:
    """Makes sure that a part is there, and is an activity, or words, where that is said."""
    there = 0 <= section < len(page.sections) and 0 <= part < len(page.sections[section].parts)
    if not there or activity not in (None, page.sections[section].parts[part].number is not None):
        raise EditRefused("That part of the page is not there any more.")


def _section(asked: Section, page: PageText) -> Edit:
    if asked.do == "add-section":
        return AddSection(asked.name.strip(), "")
    _hold(page, asked.section, 0)
    name = page.sections[asked.section].name
    if asked.do == "remove-section":
        return RemoveSection(name)
    if asked.do == "rename-section":
        return RenameSection(name, asked.name.strip())
    return MoveSection(name, asked.to)
