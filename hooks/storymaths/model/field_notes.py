"""What each field of a schema is for, in the words that stand under it in the code: authors' guide and gallery print them."""

from __future__ import annotations

import ast
from collections.abc import Iterator, Mapping
from functools import cache
from inspect import cleandoc, getsource
from itertools import pairwise
from sys import modules

from pydantic import BaseModel


@cache
def notes_of(schema: type[BaseModel]) -> Mapping[str, str]:
    """The note under each field that has one, by the field's name in the code; a schema's own goes before an inherited one."""
    notes: dict[str, str] = {}
    for cls in reversed(schema.__mro__):
        if issubclass(cls, BaseModel) and cls is not BaseModel:
            notes.update(_notes_in(cls.__module__)[cls.__qualname__])
    return notes


@cache
def _notes_in(module: str) -> Mapping[str, Mapping[str, str]]:
    """The notes of every class of a module, by its name there: Python parses a module anew for each class it is asked for."""
    return {name: dict(_notes_under(found)) for name, found in _classes_in(ast.parse(getsource(modules[module])))}


def _classes_in(node: ast.AST, within: str = "") -> Iterator[tuple[str, ast.ClassDef]]:
    for inner in ast.iter_child_nodes(node):
        if isinstance(inner, ast.ClassDef):
            yield f"{within}{inner.name}", inner
            yield from _classes_in(inner, f"{within}{inner.name}.")
        elif isinstance(inner, ast.FunctionDef):
            yield from _classes_in(inner, f"{within}{inner.name}.<locals>.")


def _notes_under(found: ast.ClassDef) -> Iterator[tuple[str, str]]:
    for field, after in pairwise(found.body):
        if isinstance(field, ast.AnnAssign) and isinstance(field.target, ast.Name) and isinstance(after, ast.Expr):
            note = after.value.value if isinstance(after.value, ast.Constant) else None
            if isinstance(note, str):
                yield field.target.id, cleandoc(note)
