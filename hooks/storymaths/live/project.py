"""A project while it is written: looked at for changes, read again where it changed, each page drawn when it is asked for."""

from __future__ import annotations

import threading
from pathlib import Path

from ..build import Build
from ..model.address import html_of
from ..pipeline import start_build


class LiveProject:
    """What a server asks for the pages of a project. All of it may be asked by several threads at once."""

    def __init__(self, root: Path) -> None:
        """Reads and checks the project at ``root``, whose slips are told on its pages."""
        self._root = root
        self._changed = threading.Condition(threading.RLock())
        self._number = 0
        self._build = start_build(root, serving=True)

    @property
    def build(self) -> Build:
        """The project as it was last read: its collection, its problems, its pages to draw."""
        return self._build

    def look(self) -> int:
        """Looks whether a file has changed, and reads what has. Gives the number of the last change, from 0 on."""
        with self._changed:
            self._build = start_build(self._root, serving=True, before=self._build.memory)
            self._number += 1
            self._changed.notify_all()
            return self._number

    def page(self, address: str) -> bytes | None:
        """The page at an address from the site's root (``books/lift/session-1.html``), as the project is now; None for none."""
        with self._changed:
            self.look()
            source = next((source for source in self._build.pages if html_of(source) == address), None)
            return self._build.page(source).encode() if source is not None else None

    def file(self, address: str) -> bytes | Path | None:
        """What stands beside the pages at an address, as it was when a page was last asked for: its content, or where it is."""
        with self._changed:
            found = self._build.files().get(address)
            return found.encode() if isinstance(found, str) else found

    def changed_since(self, number: int, seconds: float = 0) -> int:
        """The number of the last change. Where none came after ``number`` one is waited for, for so many seconds at most."""
        with self._changed:
            self._changed.wait_for(lambda: self._number > number, timeout=seconds)
            return self._number
