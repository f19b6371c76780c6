"""The files of ``site_data/``: the program's own, each with what a collection adds or corrects, checked by its schema."""

from __future__ import annotations

from pathlib import Path
from typing import Any, TypeVar

from pydantic import BaseModel, ValidationError

from ..model.carried import carried
from ..model.document import Fault, texts_in
from ..model.locator import Locator
from ..model.problem import Place
from .layers import LayeredLocator, merged
from .letters import faults_in_letters, misleading
from .schema_faults import faults_of
from .yaml_text import BrokenYaml, YamlLocator, load

M = TypeVar("M", bound=BaseModel)
_OWN_ONLY = ("site.yaml", "moved.yaml")
"""What is said of one collection alone; all else the program has, and a collection adds to it."""
_PROGRAM_ONLY = ("drawings.yaml",)
"""What keeps a reader safe, whatever a collection says."""


class ReferenceFiles:
    """Reads the files one after another, the program's with the collection's own over it, and gathers every fault."""

    def __init__(self, root: Path, folder: str) -> None:
        self._root, self._own, self._base = root, root / folder, carried("site_data")
        self._asked: set[str] = set()
        self.faults: list[Fault] = []
        self.locators: dict[str, Locator] = {}

    def read(self, name: str, schema: type[M], absent: M | None = None) -> M | None:
        """One file, or None with its faults noted; ``absent`` stands for a file that need not be there."""
        self._asked.add(name)
        files = [self._own / name] if name in _OWN_ONLY else [self._own / name, self._base / name]
        there = [file for file in files if file.is_file()]
        if len(there) == 2 and there[0].read_bytes() == there[1].read_bytes():
            there.pop()
        elif len(there) == 2 and name in _PROGRAM_ONLY:
            reason = "this list is the program's own, and holds for every collection; take the file out"
            self.faults.append(Fault("broken", Place(self._name(there.pop(0))), "", reason))
        if not there and absent is None:
            self.faults.append(Fault("broken", Place(self._name(files[0])), "", "the file is not there"))
        layers = [layer for file in there if (layer := self._layer(file)) is not None]
        if not there or len(layers) < len(there):
            return absent if not there else None
        value, locator = layers[0]
        if len(layers) == 2:
            value = merged(layers[1][0], value)
            locator = LayeredLocator(value, layers)
        self.locators[name] = locator
        try:
            return schema.model_validate(value)
        except ValidationError as error:
            self.faults += faults_of(error, schema, value if isinstance(value, dict) else {}, locator)
            return None

    def _layer(self, file: Path) -> tuple[Any, Locator] | None:
        """The value of a file, and what finds places in it; None with its faults noted."""
        path = self._name(file)
        try:
            text = file.read_text(encoding="utf-8")
            value, twice = load(text)
        except UnicodeDecodeError as error:
            reason = f"byte {error.start + 1:,} is not plain UTF-8 text"
            self.faults.append(Fault("broken", Place(path), "", reason))
            return None
        except BrokenYaml as broken:
            self.faults.append(
                Fault("broken", Place(path, broken.line, broken.column), "", broken.reason, fix=broken.fix)
            )
            return None
        self.faults += [Fault("duplicate", Place(path, key.line, key.column), key.key) for key in twice]
        locator = YamlLocator(path, text)
        self.faults += list(faults_in_letters(path, text)) or [
            Fault("letter", locator.place(loc), "", detail)
            for loc, words in (texts_in(value) if "\\" in text else ())
            for _, detail in misleading(words)
        ]
        return value, locator

    def _name(self, file: Path) -> str:
        """As people know it: those of the program are its own."""
        inside = file.is_relative_to(self._root)
        return (
            file.relative_to(self._root).as_posix()
            if inside
            else f"storymaths/{file.relative_to(self._base.parent).as_posix()}"
        )

    def note_strangers(self) -> None:
        """A file that nothing reads is a slip in its name."""
        names = {path.relative_to(self._own).as_posix(): path for path in sorted(self._own.rglob("*.y*ml"))}
        for name in names.keys() - self._asked:
            known = ", ".join(sorted(one for one in self._asked if "/" not in one))
            reason = f"there is no list of this name; the lists are {known}"
            self.faults.append(Fault("broken", Place(self._name(names[name])), "", reason))

    def names(self, folder: str) -> list[str]:
        """Every file there is in a folder, the program's or the collection's own."""
        return sorted(
            {f"{folder}/{path.name}" for place in (self._own, self._base) for path in (place / folder).glob("*.yaml")}
        )
