"""What each field of a schema is for, in the words that stand under it in the code: authors' guide and gallery print them."""

from __future__ import annotations

import ast
import inspect
from collections.abc import Iterator, Mapping
from functools import cache
from itertools import pairwise
from textwrap import dedent

from pydantic import BaseModel


@cache
def notes_of(schema: type[BaseModel]) -> Mapping[str, str]:
    """The note under each field that has one, by the field's name in the code; a schema's own goes before an inherited one."""
    notes: dict[str, str] = {}
    for cls in reversed(schema.__mro__):
        if issubclass(cls, BaseModel) and cls is not BaseModel:
            notes.update(_notes_in(cls))
    return notes


def _notes_in(cls: type[BaseModel]) -> Iterator[tuple[str, str]]:
    (found,) = ast.parse(dedent(inspect.getsource(cls))).body
    for field, after in pairwise(found.body if isinstance(found, ast.ClassDef) else ()):
        if isinstance(field, ast.AnnAssign) and isinstance(field.target, ast.Name) and isinstance(after, ast.Expr):
            note = after.value.value if isinstance(after.value, ast.Constant) else None
            if isinstance(note, str):
                yield field.target.id, inspect.cleandoc(note)
