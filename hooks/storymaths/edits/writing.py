"""How a list or a mapping that is new is written: in brackets where it is short, in lines where it says something."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from .scalars import first_form, is_text

STEP = 2
"""How much further in what is inside stands."""
_NAME, _RECORD = 24, 96
"""The most letters of a name in a list within brackets, and of a row of a table within braces."""


def in_brackets(value: Any, inside_list: bool = False) -> str:
    """A value on one line: lists in [ ], mappings in { }."""
    if isinstance(value, Mapping):
        pairs = ", ".join(f"{in_brackets(key)}: {in_brackets(inner)}" for key, inner in value.items())
        bare_pair = inside_list and len(value) == 1 and all(map(_is_list, value.values()))  # 2N1: [tens, tens-back]
        return pairs if bare_pair else f"{{{pairs}}}"
    if _is_list(value):
        return f"[{', '.join(in_brackets(item, inside_list=True) for item in value)}]"
    return first_form(value, None, "", 0, True, 0)


def after_key(value: Any, column: int, width: int, like: str | None = None) -> str:
    """What follows ``key:`` whose key stands in a column, from the blank or the line break on."""
    if isinstance(value, Mapping) and value and not fits(value, column, width):
        return "\n" + _lines_of_mapping(value, column + STEP, width)
    if _is_list(value) and value and not fits(value, column, width):
        return "\n" + "\n".join(f"{' ' * (column + STEP)}-{after_dash(i, column + STEP, width)}" for i in value)
    if isinstance(value, Mapping) or _is_list(value):
        return f" {in_brackets(value)}"
    return " " + first_form(value, like, " " * (column + STEP), width, False, column + 20)


def after_dash(value: Any, column: int, width: int, like: str | None = None, braces: bool | None = None) -> str:
    """What follows a dash that stands in a column; ``braces`` says whether the items beside it stand in them."""
    if isinstance(value, Mapping) and value and not (_is_record(value) if braces is None else braces):
        return " " + _lines_of_mapping(value, column + STEP, width).lstrip(" ")
    if isinstance(value, Mapping) or _is_list(value):
        return f" {in_brackets(value)}"
    return " " + first_form(value, like, " " * (column + STEP), width, False, column + STEP)


def _lines_of_mapping(value: Mapping[Any, Any], column: int, width: int) -> str:
    start = " " * column
    return "\n".join(
        f"{start}{first_form(key, None, '', width, False, column)}:{after_key(inner, column, width)}"
        for key, inner in value.items()
    )


def fits(value: Any, column: int, width: int) -> bool:
    """Whether a list or mapping that begins in a column is one of names and numbers, and short enough for its line."""
    if column + len(in_brackets(value)) > width:
        return False
    if isinstance(value, Mapping):
        return all(map(_is_name, value.values()))
    return _is_list(value) and all(_is_name(item) or _is_pair(item) for item in value)


def _is_name(value: Any) -> bool:
    return not isinstance(value, Mapping) and not _is_list(value) and (not is_text(value) or len(value) <= _NAME)


def _is_pair(value: Any) -> bool:
    """Whether it is a name with a list of names, such as an objective with its parts."""
    return isinstance(value, Mapping) and len(value) == 1 and all(map(_is_list, value.values()))


def _is_record(value: Mapping[Any, Any]) -> bool:
    """Whether it is a row of a table: names and numbers, and perhaps a few words."""
    found = value.values()
    return (
        not any(map(_is_list, found))
        and not any(isinstance(inner, Mapping) for inner in found)
        and (len(in_brackets(value)) <= _RECORD and all(len(str(inner)) <= _RECORD // 2 for inner in found))
    )


def _is_list(value: Any) -> bool:
    return isinstance(value, Sequence) and not isinstance(value, str)
