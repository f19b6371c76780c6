"""The text index: Pagefind run over the built site, its own program from its own wheel, and joined to the finder's rows."""

from __future__ import annotations

import errno
import gzip
import json
import os
import subprocess
import sys
import time
from collections.abc import Callable, Sequence
from pathlib import Path

from .finder_columns import addresses

INDEXED = "books/**/*.html"
"""Pages whose text is searched: those the finder leads to, and stories, which lead to their books."""
SIGNS = "=≠+−×÷<>%£½¼¾"
"""Signs that can be looked for like words."""
LEFT_OUT = (
    "nav, form, .cards, .kicker, .facts, .glance-facts, .masthead-cover, .themes, .concepts, .cast, .timetable, .dates"
)
"""Parts of a page that speak of other pages, or say in figures what the finder's facets say."""
_UNUSED = ("pagefind-*ui.*", "pagefind-highlight.js", "wasm.unknown.pagefind")
_SIGNATURE = b"pagefind_dcd"
_NO_ROOM = ("No space left on device", "os error 28", "Disk quota exceeded", "File too large")


class IndexFailed(RuntimeError):
    """The indexer did not finish; its output is the message."""


Run = Callable[[Sequence[str]], subprocess.CompletedProcess[str]]


def _run(command: Sequence[str]) -> subprocess.CompletedProcess[str]:
    return subprocess.run(command, capture_output=True, encoding="utf-8", errors="replace", check=False)


def build_text_index(site: Path, run: Run = _run) -> float:
    """Writes ``pagefind/`` into a built site. Returns the seconds it took. Raises ``IndexFailed``; ``OSError`` without room.

    ``run`` runs the indexer's program and waits for it.
    """
    started = time.perf_counter()
    command = [sys.executable, "-m", "pagefind", "--site", str(site), "--quiet", "--keep-index-url"]
    command += ["--glob", INDEXED, "--include-characters", SIGNS, "--exclude-selectors", LEFT_OUT]
    done = run(command)
    if done.returncode:
        said = (done.stderr or done.stdout).strip()
        if any(words in said for words in _NO_ROOM):
            raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))
        raise IndexFailed(said or f"it ended with {done.returncode} and said nothing")
    for pattern in _UNUSED:
        for file in (site / "pagefind").glob(pattern):
            file.unlink()
    _join_to_finder(site)
    return time.perf_counter() - started


def _join_to_finder(site: Path) -> None:
    """Writes ``text-rows.json``: the mark of each row's text in the index, in the finder's order.

    With it a hit is a row without fetching its page's text, so that counts hold for every hit and only the cards
    in sight fetch their words. ``stories`` gives the row of the book for the mark of its story.
    """
    columns = site / "finder-data.json"
    if not columns.is_file():
        return
    marks = _marks(site / "pagefind" / "fragment")
    rows = addresses(json.loads(columns.read_text(encoding="utf-8")))
    books = {address.rpartition("/")[0]: row for row, address in enumerate(rows) if address.endswith("/index.html")}
    listed = frozenset(rows)
    stories = {
        mark: books[folder]
        for address, mark in marks.items()
        if address not in listed and (folder := address.rpartition("/")[0]) in books
    }
    joined = {"rows": ",".join(marks.get(address, "") for address in rows), "stories": stories}
    (site / "text-rows.json").write_text(json.dumps(joined, separators=(",", ":")), encoding="utf-8")


def _marks(fragments: Path) -> dict[str, str]:
    """The mark of each indexed page by its address from the site's root."""
    marks: dict[str, str] = {}
    for file in sorted(fragments.glob("*.pf_fragment")):
        page = json.loads(gzip.decompress(file.read_bytes()).removeprefix(_SIGNATURE))
        marks[page["url"].lstrip("/")] = file.stem.rpartition("_")[2]
    return marks
