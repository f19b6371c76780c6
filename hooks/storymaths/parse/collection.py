"""A folder of content into a ``Collection``: the one place where content is read from disk."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterable
from pathlib import Path

from ..model.collection import Collection
from ..model.document import Document, Fault, Fields, Unread
from ..model.problem import Place
from ..model.reference import Reference
from .document import parse_document

Progress = Callable[[int, int], None]


def silent(done: int, of: int) -> None:
    """Says nothing."""


def read_collection(
    root: Path, reference: Reference, content: str = "content", progress: Progress = silent
) -> Collection:
    """Everything under ``root/content``. Paths in the result are from ``root``, with forward slashes."""
    files = sorted(_files_under(root / content))
    pages = [path for path in files if path.suffix == ".md"]
    documents, unread = [], []
    for done, path in enumerate(pages, start=1):
        page = _read(path, path.relative_to(root).as_posix())
        if isinstance(page, Document):
            documents.append(page)
        else:
            unread.append(page)
        progress(done, len(pages))
    names = frozenset(path.relative_to(root).as_posix() for path in files)
    return Collection(tuple(documents), tuple(unread), names, reference)


def _read(path: Path, name: str) -> Document[Fields] | Unread:
    try:
        text = path.read_text(encoding="utf-8")
    except UnicodeDecodeError as error:
        reason = f"the file is not plain UTF-8 text (byte {error.start + 1} is not)"
        return Unread(name, {}, (Fault("broken", Place(name), "", reason),))
    return parse_document(name, text)


def _files_under(folder: Path) -> Iterable[Path]:
    for parent, folders, names in os.walk(folder):
        folders[:] = [name for name in folders if not name.startswith(".")]
        yield from (Path(parent, name) for name in names if not name.startswith("."))
