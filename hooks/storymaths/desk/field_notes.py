"""What each field of a schema is for, in the words that stand under it in the code: one text for developer and author."""

from __future__ import annotations

import ast
import inspect
import textwrap
from collections.abc import Mapping
from functools import cache

from pydantic import BaseModel


@cache
def notes_of(schema: type[BaseModel]) -> Mapping[str, str]:
    """The note under each field, of the schemas it builds on too; a field without one is left out."""
    found: dict[str, str] = {}
    for one in reversed(schema.__mro__):
        if issubclass(one, BaseModel) and one is not BaseModel:
            found |= _own_notes(one)
    return found


def _own_notes(schema: type[BaseModel]) -> Mapping[str, str]:
    (defined,) = ast.parse(textwrap.dedent(inspect.getsource(schema))).body
    assert isinstance(defined, ast.ClassDef), "a schema is a class"
    notes: dict[str, str] = {}
    for field, note in zip(defined.body, defined.body[1:], strict=False):
        match field, note:
            case ast.AnnAssign(target=ast.Name(id=name)), ast.Expr(value=ast.Constant(value=str() as words)):
                notes[name] = " ".join(words.split()).replace("``", "")
    return notes
