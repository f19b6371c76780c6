"""What the desk does to a page: reads it, changes it, takes a change back, and brings back an earlier state."""

from __future__ import annotations

import threading
from collections.abc import Sequence
from dataclasses import dataclass, field
from pathlib import Path, PurePosixPath

from ..edits.apply import apply_all
from ..edits.edit import Edit, EditRefused
from ..edits.save import hash_of, read_file, save
from ..model.address import CONTENT
from .page_text import PageText
from .states import States


@dataclass(slots=True)
class _Trail:
    """The texts of a page since it was opened, and which of them it is now."""

    texts: list[str] = field(default_factory=list)
    now: int = 0
    last: object = None
    """What the last change was made to: more typing in the same box is one step back."""


@dataclass(frozen=True, slots=True)
class Saved:
    """A page after a change: its text, its mark, and whether there is a step back or forward."""

    text: str
    mark: str
    can_undo: bool
    can_redo: bool


class Desk:
    """The pages of a collection, to be changed one change at a time."""

    def __init__(self, root: Path, states: States | None = None) -> None:
        self.content = root / CONTENT.rstrip("/")
        self.states = states or States(root)
        self._trails: dict[str, _Trail] = {}
        self._one_at_a_time = threading.Lock()

    def open(self, source: str) -> Saved:
        """A page as its file is now. Raises ``EditRefused``."""
        with self._one_at_a_time:
            text, mark = self._read(source)
            return self._follow(source, text, mark)

    def change(self, source: str, before: str, edits: Sequence[Edit], box: object = None) -> Saved:
        """Makes changes to a page that was ``before``, and saves it.

        Raises ``EditRefused`` where they cannot be made, and ``ChangedOutside`` where the file is another by now: in
        both cases nothing is written.
        """
        with self._one_at_a_time:
            text, mark = self._read(source)
            made = apply_all(text, edits)
            if made == text and mark == before:
                return self._follow(source, text, mark)
            return self._write(source, before, text, made, box)

    def step(self, source: str, before: str, by: int) -> Saved:
        """Takes the last change back (−1), or makes it again (1). Raises as ``change`` does."""
        with self._one_at_a_time:
            text, mark = self._read(source)
            trail = self._trails.get(source, _Trail())
            to = trail.now + by
            if not 0 <= to < len(trail.texts):
                return self._follow(source, text, mark)
            new = save(self.content, source, before, trail.texts[to])
            trail.now, trail.last = to, None
            self.states.keep(source, trail.texts[to])
            return self._saved(source, new)

    def restore(self, source: str, before: str, name: str) -> Saved:
        """Brings an earlier state back; what is there now is one step back from it. Raises as ``change`` does."""
        with self._one_at_a_time:
            text, _ = self._read(source)
            state = self.states.find(source, name)
            if state is None:
                raise EditRefused("That state is not kept any more.")
            return self._write(source, before, text, state.text, None)

    def rewrite(self, source: str, before: str, text: str) -> Saved:
        """Saves what an author typed as the whole file, where it had no form. Raises as ``change`` does."""
        with self._one_at_a_time:
            old, _ = self._read(source)
            if PageText(old).controls:
                raise EditRefused("The page can be read again: change it in its form.")
            return self._write(source, before, old, text.replace("\r\n", "\n"), None)

    def text_of(self, source: str, mark: str) -> str | None:
        """A text of a page that a tab may still have, by its mark."""
        texts = self._trails[source].texts if source in self._trails else []
        return next((text for text in texts if hash_of(text.encode()) == mark), None)

    def _read(self, source: str) -> tuple[str, str]:
        """A page's text and mark. Each page has one name here, by which it is followed."""
        if PurePosixPath(source).as_posix() != source:
            raise EditRefused(f"There is no page {source} in the collection.")
        return read_file(self.content, source)

    def _write(self, source: str, before: str, old: str, new: str, box: object) -> Saved:
        self._keep(source, old)
        mark = save(self.content, source, before, new)
        self.states.keep(source, new)
        trail = self._trails[source]
        del trail.texts[trail.now + 1 :]
        if box is not None and box == trail.last and trail.now:
            trail.texts[trail.now] = new
        else:
            trail.texts.append(new)
            trail.now += 1
        trail.last = box
        return self._saved(source, mark)

    def _follow(self, source: str, text: str, mark: str) -> Saved:
        self._keep(source, text)
        return self._saved(source, mark)

    def _keep(self, source: str, text: str) -> None:
        """Takes notice of a text as it was found: one that came from outside is a step of its own."""
        trail = self._trails.setdefault(source, _Trail())
        if trail.texts and trail.texts[trail.now] == text:
            return
        self.states.keep(source, text)
        del trail.texts[trail.now + 1 :]
        trail.texts.append(text)
        trail.now, trail.last = len(trail.texts) - 1, None

    def _saved(self, source: str, mark: str) -> Saved:
        trail = self._trails[source]
        return Saved(trail.texts[trail.now], mark, trail.now > 0, trail.now < len(trail.texts) - 1)
