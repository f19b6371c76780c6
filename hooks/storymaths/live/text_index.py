"""The text index of a live project, made when the finder asks for it, and again when it asks after a change."""

from __future__ import annotations

import subprocess
import tempfile
import threading
from collections.abc import Mapping, Sequence
from pathlib import Path
from weakref import ref

from ..build import Build
from ..model.address import html_of
from ..publish.text_index import build_text_index

_ROWS = "text-rows.json"
_FOLDER = "pagefind/"
_BEGINS = (_ROWS, "pagefind/pagefind.js")
"""What the finder asks for first. The rest of what it asks for must be of the same index, be it no longer new."""


class LiveTextIndex:
    """Makes the index of all pages in a folder that goes away, and keeps its files."""

    def __init__(self) -> None:
        self._making = threading.Lock()
        self._of: ref[Build] | None = None
        self._files: Mapping[str, bytes] = {}
        self._child: subprocess.Popen[str] | None = None

    def file(self, build: Build, address: str) -> bytes | None:
        """A file of the index; None where the address is not that of one."""
        if address != _ROWS and not address.startswith(_FOLDER):
            return None
        with self._making:
            if not (self._of and self._of() is build) and (address in _BEGINS or not self._files):
                self._files = self._make(build)
                self._of = ref(build)
            return self._files.get(address)

    def close(self) -> None:
        """Ends the indexing, if it is going on."""
        if self._child is not None:
            self._child.kill()

    def _make(self, build: Build) -> Mapping[str, bytes]:
        with tempfile.TemporaryDirectory(prefix="storymaths-") as name:
            folder = Path(name)
            for source in build.pages:
                if source.startswith("books/"):
                    file = folder / html_of(source)
                    file.parent.mkdir(parents=True, exist_ok=True)
                    file.write_text(build.page(source), encoding="utf-8")
            rows = build.file("finder-data.json")
            if isinstance(rows, str):
                (folder / "finder-data.json").write_text(rows, encoding="utf-8")
            build_text_index(folder, self._run)
            made = (path for path in (*folder.glob(f"{_FOLDER}**/*"), folder / _ROWS) if path.is_file())
            return {path.relative_to(folder).as_posix(): path.read_bytes() for path in made}

    def _run(self, command: Sequence[str]) -> subprocess.CompletedProcess[str]:
        with subprocess.Popen(
            command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, encoding="utf-8", errors="replace"
        ) as child:
            self._child = child
            printed, complained = child.communicate()
        self._child = None
        return subprocess.CompletedProcess(command, child.returncode, printed, complained)
