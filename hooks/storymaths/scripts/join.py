"""Script modules joined into one classic script, which a page opened from ``file:`` can load.

Only what our own modules use is understood: ``import { a, b } from "./file.js";``, ``import "./file.js";``, and ``export``
before a ``const``, ``function`` or ``class`` of one name, each from the beginning of a line. All else is refused.
Each module is run once, after those it imports, as browsers do; modules that import each other in a ring are refused.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path

from ..model.carried import carried

SCRIPTS = carried("scripts")
_IMPORT = re.compile(r'import (?:\{ (\w+(?:, \w+)*) \} from )?"(\.\.?/[\w./-]+\.js)";')
_EXPORT = re.compile(r"export (?=(?:const|(?:async )?function|class) (\w+)\b)")
_MODULE_WORD = re.compile(r"\s*(?:import|export)\b(?!\()")
_TYPE = re.compile(r"/\*\* @type .*?\*/ ?")
"""A type told within a line of code, which says nothing to a browser."""


class NotUnderstood(ValueError):
    """A module that cannot be joined: where, and why. Meant for whoever wrote the module."""

    def __init__(self, path: Path, line: int, why: str) -> None:
        super().__init__(f"{path}, line {line}: {why}")


@dataclass(slots=True)
class _Module:
    """A module: the lines that run, the names it gives, and what it takes from which file at which line."""

    path: Path
    code: list[str] = field(default_factory=list)
    exports: list[str] = field(default_factory=list)
    imports: list[tuple[Path, str, int]] = field(default_factory=list)


def joined(entry: str, folder: Path = SCRIPTS) -> str:
    """The module ``entry``, a path within ``folder``, with all it imports: an expression whose value is its exports.

    The same modules give the same text. Raises ``NotUnderstood``.
    """
    return _Joining(folder.resolve()).text((folder / entry).resolve())


class _Joining:
    """One joining; modules are kept in the order in which they run."""

    def __init__(self, folder: Path) -> None:
        self._folder = folder
        self._done: dict[Path, _Module] = {}
        self._open: list[Path] = []

    def text(self, entry: Path) -> str:
        last = self._add(entry)
        *before, _ = self._done.values()
        lines = ["(() => {", '"use strict";']
        for module in before:
            lines += [f"const {self._name(module)} = (() => {{", *self._lines(module), "})();"]
        return "\n".join([*lines, *self._lines(last), "})()"])

    def _add(self, path: Path) -> _Module:
        if path in self._done:
            return self._done[path]
        self._open.append(path)
        module = _read(path)
        for wanted, names, line in module.imports:
            if wanted in self._open:
                raise NotUnderstood(path, line, f"{wanted.name} imports this module too, in a ring.")
            if not wanted.is_relative_to(self._folder) or not wanted.is_file():
                raise NotUnderstood(path, line, f"there is no {wanted.name} there.")
            given = self._add(wanted).exports
            if missing := [name for name in names.split(", ") if name and name not in given]:
                raise NotUnderstood(path, line, f"{wanted.name} exports no {missing[0]}.")
        self._open.pop()
        self._done[path] = module
        return module

    def _name(self, module: _Module) -> str:
        return f"${list(self._done).index(module.path)}"

    def _lines(self, module: _Module) -> Iterator[str]:
        for wanted, names, _ in module.imports:
            if names:
                yield f"const {{ {names} }} = {self._name(self._done[wanted])};"
        yield from map(str.strip, module.code)
        if module.exports:
            yield f"return {{ {', '.join(module.exports)} }};"


def _read(path: Path) -> _Module:
    module = _Module(path)
    for number, line in _without_notes(path):
        if line.count("`") % 2 or line.endswith("\\"):
            raise NotUnderstood(path, number, "text must end on the line it begins on.")
        if found := _IMPORT.fullmatch(line):
            module.imports.append(((path.parent / found[2]).resolve(), found[1] or "", number))
        elif found := _EXPORT.match(line):
            module.exports.append(found[1])
            module.code.append(line[found.end() :])
        elif _MODULE_WORD.match(line):
            raise NotUnderstood(path, number, f"this import or export is not of a form that is understood: {line}")
        else:
            module.code.append(line)
    return module


def _without_notes(path: Path) -> Iterator[tuple[int, str]]:
    """The lines that are not empty and no notes, each with its number."""
    begun = 0
    for number, line in enumerate(path.read_text("utf-8").splitlines(), start=1):
        bare = line.strip()
        if not begun and bare.startswith("/*"):
            begun = number
        if not begun:
            if bare and not bare.startswith("//"):
                yield number, _TYPE.sub("", line.rstrip())
        elif "*/" in bare:
            if not bare.endswith("*/"):
                raise NotUnderstood(path, number, "nothing may follow the end of a note on its line.")
            begun = 0
    if begun:
        raise NotUnderstood(path, begun, "this note has no end.")
