"""A project while it is written: looked at for changes, read again where it changed, each page drawn when it is asked for."""

from __future__ import annotations

import hashlib
import threading
import time
from functools import cached_property
from pathlib import Path

from ..build import Build, File
from ..pipeline import start_build
from ..reading import ProjectReader
from .sheets import LiveSheets
from .text_index import LiveTextIndex

_PAGES_KEPT = 32
"""Drawn pages kept until something changes: those that are open."""
_SHORTEST_PAUSE = 0.2
_SHARE_OF_LOOKING = 0.2
"""Seconds between two looks of the watch, and the share of its time that it may spend looking."""


class LiveProject:
    """What a server asks for the pages of a project. All of it may be asked by several threads at once."""

    def __init__(self, root: Path, address: str = "") -> None:
        """Reads and checks the project at ``root``, whose slips are told on its pages. ``address`` is where it is served."""
        self._root, self._address = root, address
        self._changed = threading.Condition(threading.RLock())
        self._files = threading.Lock()
        self._number = 0
        self._reader = ProjectReader(root)
        self._sheets = LiveSheets(self._show_again)
        self._texts = LiveTextIndex()
        self._shown = self._show()

    @property
    def build(self) -> Build:
        """The project as it was last read: its collection, its problems, its pages to draw."""
        return self._shown.build

    def look(self) -> int:
        """Looks whether a file has changed, and reads what has. Gives the number of the last change, from 0 on."""
        with self._changed:
            now, before = self._show(), self.build.reading
            reading = now.build.reading
            stuck = reading.collection is None and before.collection is None and reading.problems == before.problems
            if reading is not before and not stuck:
                self._shown = now
                self._tell()
            return self._number

    def page(self, address: str) -> bytes | None:
        """The page at an address from the site's root (``books/lift/session-1.html``), as the project is now; None for none."""
        with self._changed:
            self.look()
            shown, source = self._shown, self.build.source_at.get(address)
            page = shown.page(source) if source is not None else None
        if source is not None:
            self._sheets.want(shown.build, source)
        return page

    def mark(self, address: str) -> str:
        """Equal for two looks at the page at an address, and the pictures on it, where these have not changed between."""
        with self._changed:
            page = self.page(address) or b""
            return hashlib.blake2b(page + self._shown.pictures, digest_size=16).hexdigest()

    def file(self, address: str) -> File | None:
        """What stands beside the pages at an address, as it was when a page was last asked for.

        Print sheets and the text index are made when they are asked for, which may take seconds.
        """
        build = self.build
        made = self._texts.file(build, address) or self._sheets.file(build, address)
        if made is not None:
            return made
        with self._files:  # apart from the pages: some take seconds when they are made for the first time
            return build.file(address)

    def changed_since(self, number: int, seconds: float = 0) -> int:
        """The number of the last change. Where none came after ``number`` one is waited for, for so many seconds at most."""
        with self._changed:
            self._changed.wait_for(lambda: self._number > number, timeout=seconds)
            return self._number

    def start(self) -> None:
        """Looks for changes from now on, and makes print sheets aside. The threads of both end with the program."""
        for work in (self._watch, self._sheets.make_what_is_wanted):
            threading.Thread(target=work, daemon=True).start()

    def close(self) -> None:
        """Ends what works aside in processes of its own."""
        self._texts.close()

    def _watch(self) -> None:
        number, pause = 0, 0.0
        while True:
            time.sleep(max(_SHORTEST_PAUSE, pause))
            began, last = time.thread_time(), number
            number = self.look()
            if number == last:  # else most of the time went into reading
                pause = (time.thread_time() - began) / _SHARE_OF_LOOKING

    def _show(self) -> _Shown:
        return _Shown(start_build(
            self._root, serving=True, address=self._address, reader=self._reader, offered=self._sheets.offered
        ))  # fmt: skip

    def _show_again(self) -> None:
        """Other sheets are offered than were: pages that say so are to be drawn again."""
        with self._changed:
            self._shown = _Shown(self.build)
            self._tell()

    def _tell(self) -> None:
        self._number += 1
        self._changed.notify_all()


class _Shown:
    """A build whose pages are looked at: those drawn last are kept."""

    def __init__(self, build: Build) -> None:
        self.build = build
        self._pages: dict[str, bytes] = {}

    def page(self, source: str) -> bytes:
        """A page as a browser gets it."""
        page = self._pages.pop(source, None) or self.build.page(source).encode()
        self._pages[source] = page
        if len(self._pages) > _PAGES_KEPT:
            del self._pages[next(iter(self._pages))]
        return page

    @cached_property
    def pictures(self) -> bytes:
        """Equal for two builds whose pictures are the same."""
        times = ((name, path.stat().st_mtime_ns) for name, path in self.build.picture_files.items() if path.is_file())
        return repr(sorted(times)).encode()
