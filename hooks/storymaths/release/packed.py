"""Text files packed beside themselves, so that a web server sends the small one without packing it each time.

``page.html.gz`` (RFC 1952) and ``page.html.br`` (RFC 7932) stand beside ``page.html`` where they are smaller. The same
file packs into the same bytes: no name and no time goes in.
"""

from __future__ import annotations

import gzip
from collections.abc import Callable, Iterator, Mapping
from pathlib import Path

import brotli  # type: ignore[import-untyped] # it comes without types

TEXT = (".html", ".css", ".js", ".json", ".svg", ".xml", ".txt", ".csv", ".ics", ".atom", ".jsonld")
"""Endings of what packs well; letterforms, pictures, PDFs and the text index are packed already."""


def pack(folder: Path, before: Path | None = None) -> int:
    """Packs every text file of a built site; returns how many bytes the smallest forms of its files come to.

    What is the same as in the release ``before`` is packed already: packing well takes a second for a megabyte.
    """
    total = 0
    for path in sorted(folder.rglob("*")):
        if path.is_file() and path.suffix not in _FORMS:
            data = path.read_bytes()
            same = before / path.relative_to(folder) if before else None
            kept = same if same is not None and same.is_file() and same.read_bytes() == data else None
            total += min([len(data), *_write(path, data, kept)])
    return total


def _write(path: Path, data: bytes, kept: Path | None) -> Iterator[int]:
    for ending, packed in _FORMS.items():
        beside = path.with_name(path.name + ending)
        form = _form(packed, data, kept and kept.with_name(beside.name)) if path.suffix in TEXT else data
        if len(form) < len(data):
            beside.write_bytes(form)
            yield len(form)
        else:
            beside.unlink(missing_ok=True)


def _form(packed: Callable[[bytes], bytes], data: bytes, kept: Path | None) -> bytes:
    return kept.read_bytes() if kept is not None and kept.is_file() else packed(data)


def _gzip(data: bytes) -> bytes:
    return gzip.compress(data, 9, mtime=0)


def _brotli(data: bytes) -> bytes:
    packed: bytes = brotli.compress(data, mode=brotli.MODE_TEXT, quality=11)
    return packed


_FORMS: Mapping[str, Callable[[bytes], bytes]] = {".gz": _gzip, ".br": _brotli}
