"""The collection as it is now, read again when a file has changed, and drawn page by page as the site draws it."""

from __future__ import annotations

import threading
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import TypeAlias

from ..build import Build
from ..model.address import CONTENT, html_of
from ..model.problem import Problem
from ..model.site_settings import SiteSettings
from ..pipeline import start_build
from ..publish.assets import look
from ..publish.page_frame import theme_files
from ..publish.sheets import Sheet

_WATCHED = (CONTENT, "site_data")
_Stamp: TypeAlias = frozenset[tuple[str, int, int]]


class CollectionNow:
    """Reads when asked, and at most once for any state of the files."""

    def __init__(self, root: Path) -> None:
        self._root = root
        self._build: Build | None = None
        self._stamp: _Stamp = frozenset()
        self._one_at_a_time = threading.Lock()
        self._files: Mapping[str, bytes | str | Path] = {}
        self._shared: Mapping[str, bytes | str | Path] = {}
        self._printed: dict[str, Path] = {}

    def build(self) -> Build:
        """What is made of the files as they are now."""
        with self._one_at_a_time:
            return self._current()

    def _current(self) -> Build:
        stamp = self._look()
        if self._build is None or stamp != self._stamp:
            before = self._build.memory if self._build else None
            # Setting every sheet would take longer than the page does; each is made when it is asked for.
            self._build = start_build(self._root, serving=True, before=before, sheets=False)
            self._stamp, self._files = stamp, {}
        return self._build

    def latest(self) -> Build:
        """What was made of the files last, which need not be as they are now: for lists, which change seldom."""
        return self._build or self.build()

    @property
    def problems(self) -> tuple[Problem, ...]:
        """Everything wrong now."""
        return self.build().reading.problems

    def draw(self, address: str) -> bytes | Path | None:
        """What stands at an address of the site; None where nothing does."""
        with self._one_at_a_time:
            build = self._current()
            source = next((page for page in build.pages if html_of(page) == address), None)
            if source is not None:
                return build.page(source).encode()
            picture = f"{CONTENT}{address}"
            if build.reading.collection and picture in build.reading.collection.files and not address.endswith(".md"):
                return self._root / picture
            found = self._of_every_page(build).get(address) or self._printed.get(address)
            if found is None:
                self._files = self._files or build.files()
                found = self._files.get(address)
        return found.encode() if isinstance(found, str) else found

    def _of_every_page(self, build: Build) -> Mapping[str, bytes | str | Path]:
        """What all pages share, which no page changes: it need not wait for the files that tell of the whole collection."""
        if not self._shared:
            settings = build.reading.collection.reference.site if build.reading.collection else SiteSettings()
            self._shared = {**theme_files(), **look(self._root / ".cache", settings)}
        return self._shared

    def sheets(self, source: str) -> Sequence[Sheet]:
        """The print sheets of a page, made now."""
        with self._one_at_a_time:
            build = self._current()
            made = build.sheets_of(source)
            self._printed |= {sheet.address: build.pdf(sheet) for sheet in made}
            return made

    def _look(self) -> _Stamp:
        found = []
        for folder in _WATCHED:
            for path in sorted((self._root / folder).rglob("*")):
                about = path.lstat()
                found.append((str(path), about.st_mtime_ns, about.st_size))
        return frozenset(found)
