"""``site_data/`` of one project, read again only when a file of it, or of the program's own lists, has changed."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from ..model.carried import carried
from ..model.reference import Reference
from .file_mark import Mark, digest_of, mark_of
from .reference import ReferenceBroken, read_reference


class ReferenceReader:
    """Reads the lists of a project; what it gives is the same object as before where nothing has changed."""

    def __init__(self, root: Path) -> None:
        self._root = root
        self._marks: Mapping[Path, Mark | None] = {}
        self._digests: Mapping[Path, bytes] = {}
        self._last: Reference | ReferenceBroken | None = None

    def read(self) -> Reference | ReferenceBroken:
        """The reference data, or what is wrong with it."""
        folders = dict.fromkeys((self._root / "site_data", carried("site_data")))
        marks = {path: mark_of(path) for folder in folders for path in sorted(folder.rglob("*.y*ml"))}
        if self._last is not None and marks == self._marks and None not in marks.values():
            return self._last
        digests = {path: digest_of(path.read_bytes()) for path in marks if path.is_file()}
        if self._last is None or digests != self._digests:
            try:
                self._last = read_reference(self._root)
            except ReferenceBroken as broken:
                self._last = broken
        self._marks, self._digests = marks, digests
        return self._last
