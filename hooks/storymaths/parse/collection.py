"""A folder of content into a ``Collection``, file by file: the one place where content is read from disk."""

from __future__ import annotations

import os
import re
import stat
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from pathlib import Path

from ..model.collection import Collection
from ..model.document import Document, Fault, Unread
from ..model.names import NAME, PRINTS_NOTHING, Prints
from ..model.page_fields import PageFields
from ..model.problem import Place
from ..model.reference import FileLimits, Reference
from .document import parse_document
from .drawing import faults_in_picture
from .file_mark import Mark, digest_of, mark_of
from .letters import faults_in_letters
from .page_text import faults_in_fields, nested_in_fields, page_numbers_too_large, page_text, too_large

Progress = Callable[[int, int], None]
_CONTROLS = re.compile(r"[\x00-\x1f\x7f-\x9f]")
_HIDDEN = (".", "~$")
"""What begins with a dot; and what word processors lay beside a file that is open."""
_MADE_BY_SYSTEMS = frozenset(("thumbs.db", "ehthumbs.db", "desktop.ini", "icon\r"))
"""What Windows and macOS put into a folder that is looked at, and then do not show."""
PICTURES = (".svg", ".png", ".jpg", ".jpeg", ".webp")


def silent(done: int, of: int) -> None:
    """Says nothing."""


@dataclass(frozen=True, slots=True)
class _Read:
    """A file as it was read: its mark then, what it held, and what became of it."""

    mark: Mark | None
    digest: bytes
    outcome: Document[PageFields] | Unread | tuple[Fault, ...]
    """A page; of any other file, what is wrong with it."""


class ContentReader:
    """Reads the content of a project; after the first time, only files that have changed."""

    def __init__(self, root: Path, content: str = "content") -> None:
        """Paths in what is read are from ``root``, with forward slashes."""
        self._root, self._folder = root, root / content
        self._read: dict[str, _Read] = {}
        self._collection: Collection | None = None

    def read(self, reference: Reference, progress: Progress = silent) -> Collection:
        """Everything in the folder; the same ``Collection`` as before where nothing has changed."""
        last, before = self._collection, self._read
        if last is not None and last.reference.limits.files != reference.limits.files:
            before = {}
        paths, found = _files_under(self._root, self._folder), dict[str, _Read]()
        pages = done = sum(name.endswith(".md") for name in paths)
        for name, path in paths.items():
            found[name] = _read_again(name, path, reference.limits.files, before.get(name))
            if name.endswith(".md"):
                done -= 1
                progress(pages - done, pages)
        self._read = found
        if last is not None and last.reference is reference and _same(before, found):
            return last
        self._collection = _gathered(found, reference)
        return self._collection


def read_collection(root: Path, reference: Reference, progress: Progress = silent) -> Collection:
    """Everything under ``root/content``. Paths in the result are from ``root``, with forward slashes."""
    return ContentReader(root).read(reference, progress)


def _read_again(name: str, path: str, limits: FileLimits, before: _Read | None) -> _Read:
    """A file, read if it has changed since it was read ``before``."""
    mark = mark_of(path)
    if before is not None and mark is not None and mark == before.mark:
        return before
    is_page = name.endswith(".md")
    data = _bytes_of(Path(path), name, limits.page_bytes if is_page else limits.picture_bytes)
    if isinstance(data, Fault):
        fresh = _Read(None, b"", Unread(name, {}, (data,)) if is_page else (data,))
        return before if before == fresh else fresh
    digest = digest_of(data)
    if before is not None and digest == before.digest:
        return replace(before, mark=mark)
    return _Read(mark, digest, read_page(name, data, limits) if is_page else _faults_beside(name, data))


def _same(before: Mapping[str, _Read], found: Mapping[str, _Read]) -> bool:
    return before.keys() == found.keys() and all(
        one is before[name] or (one.digest and one.digest == before[name].digest) for name, one in found.items()
    )


def _gathered(found: Mapping[str, _Read], reference: Reference) -> Collection:
    outcomes = [one.outcome for one in found.values()]
    documents = tuple(one for one in outcomes if isinstance(one, Document))
    unread = tuple(one for one in outcomes if isinstance(one, Unread))
    faults = tuple(fault for one in outcomes if isinstance(one, tuple) for fault in one)
    return Collection(documents, unread, frozenset(found), reference, faults)


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
    fields = (*nested_in_fields(page, limits), *page_numbers_too_large(page, limits))
    fields += tuple(faults_in_fields(page, limits)) if worth_a_look else ()
    if any(fault.kind == "file" for fault in fields):
        return Unread(name, page.raw, page.faults + fields, page.written)
    return replace(page, faults=page.faults + (letters or fields))


def name_of(path: Path, root: Path) -> str:
    """A file's path from the root, with forward slashes, fit to be printed."""
    return printable(path.relative_to(root).as_posix())


def printable(name: str) -> str:
    """A file's name; what is no letter, or would break a report's line, is spelt out."""
    if name.isascii() and name.isprintable():
        return name
    spelt = name.encode("utf-8", "surrogateescape").decode("utf-8", "backslashreplace")
    return _CONTROLS.sub(lambda sign: f"\\x{ord(sign.group()):02x}", spelt)


def _bytes_of(path: Path, name: str, most: int) -> bytes | Fault:
    """What is in a file, if it is one of fair size and not a link to another; never more is read."""
    try:
        about = path.lstat()
        if stat.S_ISLNK(about.st_mode):
            return Fault("file", Place(name), "", "it is a link to another place on this machine")
        if stat.S_ISDIR(about.st_mode):
            os.scandir(path).close()  # says why it cannot be looked into
        if not stat.S_ISREG(about.st_mode):
            return Fault("file", Place(name), "", "it is not a plain file")
        if about.st_size > most:
            return too_large(name, about.st_size, most)
        return path.read_bytes()
    except OSError as error:
        return Fault("file", Place(name), "", f"it cannot be opened ({(error.strerror or 'no reason given').lower()})")


def _faults_beside(name: str, data: bytes) -> tuple[Fault, ...]:
    if not name.endswith(PICTURES):
        return (
            Fault("file", Place(name), "", f"content/ holds pages (.md) and pictures ({', '.join(PICTURES)}) only"),
        )
    return tuple(faults_in_picture(name, data))


def _files_under(root: Path, folder: Path) -> dict[str, str]:
    """Every file by its name, and every link to a folder, which is not followed; what is hidden is passed over.

    So is every folder that cannot be looked into, to be told.
    """
    found: list[tuple[str, str]] = []

    def note(error: OSError) -> None:
        found.append((name_of(Path(error.filename), root), error.filename))

    for parent, folders, names in os.walk(folder, onerror=note):
        linked = [name for name in folders if Path(parent, name).is_symlink()]
        folders[:] = [name for name in folders if not name.startswith(".") and name not in linked]
        above = f"{name_of(Path(parent), root)}/"
        found += [
            (above + printable(name), os.path.join(parent, name))
            for name in (*names, *linked)
            if not (name.startswith(_HIDDEN) or name.lower() in _MADE_BY_SYSTEMS)
        ]
    return dict(sorted(found, key=lambda one: one[0].split("/")))
