"""A folder of content into a ``Collection``: the one place where content is read from disk."""

from __future__ import annotations

import os
import re
import stat
from collections.abc import Callable, Iterator
from dataclasses import replace
from pathlib import Path

from ..model.collection import Collection
from ..model.document import Document, Fault, Unread
from ..model.names import NAME, PRINTS_NOTHING, Prints
from ..model.page_fields import PageFields
from ..model.problem import Place
from ..model.reference import FileLimits, Reference
from .document import parse_document
from .drawing import faults_in_picture
from .letters import faults_in_letters
from .page_text import faults_in_fields, nested_in_fields, page_text, too_large

Progress = Callable[[int, int], None]
_CONTROLS = re.compile(r"[\x00-\x1f\x7f-\x9f]")
PICTURES = (".svg", ".png", ".jpg", ".jpeg", ".webp")


def silent(done: int, of: int) -> None:
    """Says nothing."""


def read_collection(
    root: Path, reference: Reference, content: str = "content", progress: Progress = silent
) -> Collection:
    """Everything under ``root/content``. Paths in the result are from ``root``, with forward slashes."""
    files = {name_of(path, root): path for path in sorted(_files_under(root / content))}
    limits = reference.limits.files
    pages = [name for name in files if name.endswith(".md")]
    documents, unread = [], []
    for done, name in enumerate(pages, start=1):
        data = _bytes_of(files[name], name, limits.page_bytes)
        page = Unread(name, {}, (data,)) if isinstance(data, Fault) else read_page(name, data, limits)
        if isinstance(page, Document):
            documents.append(page)
        else:
            unread.append(page)
        progress(done, len(pages))
    others = (name for name in files if not name.endswith(".md"))
    faults = tuple(fault for name in others for fault in _faults_beside(files[name], name, limits))
    return Collection(tuple(documents), tuple(unread), frozenset(files), reference, faults)


def read_page(
    name: str, data: bytes, limits: FileLimits, prints: Prints = PRINTS_NOTHING
) -> Document[PageFields] | Unread:
    """A page from what is in its file; ``name`` is its path from the project root, ``prints`` what its names print."""
    text = page_text(name, data, limits)
    if not isinstance(text, str):
        return Unread(name, {}, tuple(text))
    letters = tuple(faults_in_letters(name, text))
    page = parse_document(name, text, prints)
    if NAME.search(text):
        page = replace(page, written=text)
    if isinstance(page, Unread):
        # A sign that is not seen is what breaks the YAML around it; told once, by its name.
        faults = letters if letters and all(fault.kind == "broken" for fault in page.faults) else page.faults + letters
        return replace(page, faults=faults)
    worth_a_look = "\\" in text or len(text) - len(page.body) > limits.paragraph_characters
    fields = tuple(nested_in_fields(page, limits)) + (tuple(faults_in_fields(page, limits)) if worth_a_look else ())
    if any(fault.kind == "file" for fault in fields):
        return Unread(name, page.raw, page.faults + fields, page.written)
    return replace(page, faults=page.faults + (letters or fields))


def name_of(path: Path, root: Path) -> str:
    """A file's path from the root, with forward slashes; what is no letter, or would break a report's line, is spelt out."""
    name = path.relative_to(root).as_posix().encode("utf-8", "surrogateescape").decode("utf-8", "backslashreplace")
    return _CONTROLS.sub(lambda sign: f"\\x{ord(sign.group()):02x}", name)


def _bytes_of(path: Path, name: str, most: int) -> bytes | Fault:
    """What is in a file, if it is one of fair size and not a link to another; never more is read."""
    try:
        about = path.lstat()
        if stat.S_ISLNK(about.st_mode):
            return Fault("file", Place(name), "", "it is a link to another place on this machine")
        if not stat.S_ISREG(about.st_mode):
            return Fault("file", Place(name), "", "it is not a plain file")
        if about.st_size > most:
            return too_large(name, about.st_size, most)
        return path.read_bytes()
    except OSError as error:
        return Fault("file", Place(name), "", f"it cannot be opened ({(error.strerror or 'no reason given').lower()})")


def _faults_beside(path: Path, name: str, limits: FileLimits) -> Iterator[Fault]:
    data = _bytes_of(path, name, limits.picture_bytes)
    if isinstance(data, Fault):
        yield data
    elif path.suffix not in PICTURES:
        yield Fault("file", Place(name), "", f"content/ holds pages (.md) and pictures ({', '.join(PICTURES)}) only")
    else:
        yield from faults_in_picture(name, data)


def _files_under(folder: Path) -> Iterator[Path]:
    """Every file, and every link to a folder, which is not followed; what begins with a dot is passed over."""
    for parent, folders, names in os.walk(folder):
        linked = [name for name in folders if Path(parent, name).is_symlink()]
        folders[:] = [name for name in folders if not name.startswith(".") and name not in linked]
        yield from (Path(parent, name) for name in (*names, *linked) if not name.startswith("."))
