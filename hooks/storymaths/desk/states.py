"""Every state of a page that was saved, kept beside the collection, so that none is ever lost to a slip."""

from __future__ import annotations

import datetime
import os
from collections.abc import Callable
from dataclasses import dataclass
from difflib import unified_diff
from pathlib import Path

from ..edits.edit import EditRefused
from ..edits.in_place import move_in_place

FOLDER = ".desk"
"""Beside ``content/``; it begins with a dot, so it is no part of the collection."""
_MOST = 200
"""States kept of a page: the oldest go first."""
_TIME = "%Y%m%dT%H%M%S%f"
Clock = Callable[[], datetime.datetime]


@dataclass(frozen=True, slots=True)
class State:
    """A page as it once was: a name for it, when, and its text."""

    name: str
    when: datetime.datetime
    text: str


class States:
    """The kept states of the pages of a collection."""

    def __init__(self, root: Path, clock: Clock = lambda: datetime.datetime.now(datetime.UTC)) -> None:
        self._folder, self._clock = root / FOLDER, clock

    def keep(self, source: str, text: str) -> None:
        """Keeps a state, unless it is the last one kept. What ``source`` names has been found to be a page.

        Raises ``EditRefused``.
        """
        folder = self._of(source)
        if not folder.resolve().is_relative_to(self._folder.parent.resolve()):
            raise EditRefused(f"{FOLDER} is a link to another place: take it away, so that what you save is kept here.")
        kept = self._files(source)
        data = text.encode("utf-8")
        if kept and kept[-1].read_bytes() == data:
            return
        folder.mkdir(parents=True, exist_ok=True)
        aside = folder / f".{os.getpid()}"
        aside.write_bytes(data)
        move_in_place(aside, folder / f"{self._name(kept)}.md")
        for old in kept[: len(kept) + 1 - _MOST]:
            old.unlink(missing_ok=True)

    def all(self, source: str) -> list[State]:
        """The kept states of a page, the newest first."""
        return [self._read(file) for file in reversed(self._files(source))]

    def find(self, source: str, name: str) -> State | None:
        """The state of a name; None where there is none any more."""
        return next((self._read(file) for file in self._files(source) if file.stem == name), None)

    def _name(self, kept: list[Path]) -> str:
        """The time; never earlier than the last, whatever the clock does."""
        now = self._clock().strftime(_TIME)
        return now if not kept or now > kept[-1].stem else f"{kept[-1].stem}1"

    def _read(self, file: Path) -> State:
        when = datetime.datetime.strptime(file.stem[:21], _TIME).replace(tzinfo=datetime.UTC)
        return State(file.stem, when, file.read_bytes().decode("utf-8", errors="replace"))

    def _of(self, source: str) -> Path:
        return self._folder / source.removesuffix(".md")

    def _files(self, source: str) -> list[Path]:
        return sorted(self._of(source).glob("[0-9]*.md"))


def difference(old: str, new: str) -> list[str]:
    """What is other in a text, line by line, each with + or − before it."""
    lines = unified_diff(old.splitlines(), new.splitlines(), lineterm="", n=0)
    changed = [line for line in lines if not line.startswith("@@")][2:]  # two lines name the files
    return [f"−{line[1:]}" if line.startswith("-") else line for line in changed]
