"""What an upgrade of a collection would do: the difference, what is left to mend after it, and the writing of it."""

from __future__ import annotations

import difflib
import os
import secrets
import shutil
import tempfile
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from ..edits.in_place import move_in_place
from ..model.address import CONTENT
from ..model.program_version import FIRST_VERSION, VERSION
from ..publish.new_file import beside
from ..reading import Reading, read_and_check
from .changes import Change, changes_since
from .rewrite import Rewriting
from .spans import child, yaml_in

SETTINGS = "site_data/site.yaml"
_NOTED_IN = "checked_with"


class Changed(Exception):
    """A file is no longer as it was when the difference was made; nothing was written."""


@dataclass(frozen=True)
class Plan:
    """An upgrade that can be shown, and then written."""

    root: Path
    before: Mapping[str, str]
    after: Mapping[str, str]
    by_hand: Sequence[str]
    """What its author has to do herself."""
    reading: Reading
    """The collection as it will be."""

    @property
    def touched(self) -> list[str]:
        """The paths of the files that change or go."""
        return [path for path, text in self.before.items() if self.after.get(path) != text]

    @property
    def noted(self) -> bool:
        """Whether nothing is left to mend, and this version is noted as the last that checked it."""
        return not (self.by_hand or self.reading.problems or self.reading.warnings)


def last_checked(root: Path) -> str:
    """The version that last checked a collection, as its settings say, whatever else is wrong with them."""
    try:
        part = yaml_in((root / SETTINGS).read_text(encoding="utf-8"))
    except (OSError, UnicodeDecodeError):
        return FIRST_VERSION
    said = child(part.root, _NOTED_IN) if part else None
    version = str(said[1].value) if said else ""
    return version if version and all(part.isdecimal() for part in version.split(".")) else FIRST_VERSION


def make_plan(root: Path, changes: Sequence[Change] | None = None) -> Plan:
    """What is to be done, from the table of changes if not given; nothing is written in ``root``."""
    before = dict(_texts(root))
    rewriting = Rewriting(dict(before))
    rewriting.make(changes_since(last_checked(root)) if changes is None else changes)
    reading = _as_it_will_be(root, before, rewriting.texts)
    plan = Plan(root, before, rewriting.texts, rewriting.by_hand, reading)
    if plan.noted and SETTINGS in rewriting.texts and last_checked(root) != VERSION:
        rewriting.set_line(SETTINGS, _NOTED_IN, VERSION)
    return plan


def _texts(root: Path) -> Iterator[tuple[str, str]]:
    """Every page and every list of the collection's own; what is no text is for the check to tell of."""
    for path in sorted([*(root / CONTENT).rglob("*.md"), *(root / "site_data").rglob("*.yaml")]):
        name = path.relative_to(root).as_posix()
        if path.is_file() and not path.is_symlink() and "/." not in name:
            try:
                yield name, path.read_bytes().decode("utf-8")
            except (OSError, UnicodeDecodeError):
                continue


def _as_it_will_be(root: Path, before: Mapping[str, str], after: Mapping[str, str]) -> Reading:
    with tempfile.TemporaryDirectory(prefix="storymaths-") as folder:
        copy = Path(folder)
        for name in (CONTENT, "site_data"):
            shutil.copytree(root / name, copy / name, symlinks=True)
        for path in before:
            if path not in after:
                (copy / path).unlink()
            elif after[path] != before[path]:
                (copy / path).write_bytes(after[path].encode())
        return read_and_check(copy)


def difference(plan: Plan) -> str:
    """What changes, as a unified difference."""
    return "\n".join(line for path in plan.touched for line in _difference(path, plan))


def _difference(path: str, plan: Plan) -> Iterator[str]:
    after = plan.after.get(path)
    now = "/dev/null" if after is None else path
    yield from difflib.unified_diff(plan.before[path].splitlines(), (after or "").splitlines(), path, now, lineterm="")


def write(plan: Plan) -> None:
    """Writes each file beside its place and then puts them all there. Raises ``Changed``, and ``OSError``."""
    aside = dict[str, Path]()
    try:
        for path in plan.touched:
            if path in plan.after:
                aside[path] = _write_aside(plan.root / path, plan.after[path])
        for path in plan.touched:
            if (plan.root / path).read_bytes() != plan.before[path].encode():
                raise Changed(path)
        for path, part in aside.items():
            move_in_place(part, plan.root / path)
        for path in plan.touched:
            if path not in plan.after:
                (plan.root / path).unlink()
    finally:
        for part in aside.values():
            part.unlink(missing_ok=True)


def _write_aside(file: Path, text: str) -> Path:
    part = beside(file, secrets.token_hex(4))
    with part.open("xb") as opened:
        opened.write(text.encode())
        opened.flush()
        os.fsync(opened.fileno())
    shutil.copymode(file, part)
    return part
