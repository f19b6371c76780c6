"""A page read from its file and put back: whole or not at all, and never over what somebody else wrote meanwhile."""

from __future__ import annotations

import hashlib
import os
import stat
from pathlib import Path, PurePosixPath

from .edit import EditRefused
from .in_place import move_in_place


class ChangedOutside(Exception):
    """The file is not as it was read: its text now, and the text that was to be written. Neither is lost."""

    def __init__(self, theirs: str, ours: str) -> None:
        super().__init__("The file has been changed outside meanwhile; nothing was written over it.")
        self.theirs, self.ours = theirs, ours


def read_file(content: Path, source: str) -> tuple[str, str]:
    """The text of a page, its line ends and all, and a mark of it to save by; ``source`` is its name inside ``content``.

    Raises ``EditRefused``.
    """
    data = _bytes(_within(content, source))
    try:
        return data.decode("utf-8"), hash_of(data)
    except UnicodeDecodeError:
        raise EditRefused(
            f"{source} is not text in UTF-8: save it as that in the program it was written with."
        ) from None


def hash_of(data: bytes) -> str:
    """The mark of what is in a file."""
    return hashlib.sha256(data).hexdigest()


def save(content: Path, source: str, before: str, text: str) -> str:
    """Writes a page whose mark was ``before`` when it was read, and gives its new mark.

    Written aside, made sure of on the disk and put in place in one step, so that the file is the old or the new at any
    moment. Keeps the file's mode. Raises ``ChangedOutside``, and ``EditRefused`` for what may not be written.
    """
    path = _within(content, source)
    try:
        data = text.encode("utf-8")
    except UnicodeEncodeError:
        raise EditRefused("The text holds half of a sign: take out what was pasted last.") from None
    _hold_unchanged(path, before, text)
    aside = path.with_name(f".{path.name}.saving")
    aside.unlink(missing_ok=True)  # what a killed run left
    try:
        _write(aside, data, stat.S_IMODE(path.stat().st_mode))
        _hold_unchanged(path, before, text)
        move_in_place(aside, path)
    except PermissionError:
        raise EditRefused(
            f"{source} may not be written, or another program holds it: close it there, and make the change again."
        ) from None
    finally:
        aside.unlink(missing_ok=True)
    _make_sure_of_folder(path.parent)
    return hash_of(data)


def _within(content: Path, source: str) -> Path:
    """The file of a page: a plain file in plain folders of the collection."""
    parts = PurePosixPath(source).parts
    path = content
    for part in parts:
        path /= part
        if part in ("..", ".", "/") or "\\" in part or ":" in part or part.startswith("."):
            raise EditRefused(f"{source} is not the name of a page.")
        if path.is_symlink():
            raise EditRefused(f"{source} is reached by a link: only files that stand in the collection are written.")
    if not parts or path.suffix != ".md" or not path.is_file():
        raise EditRefused(f"There is no page {source} in the collection.")
    return path


def _bytes(path: Path) -> bytes:
    try:
        return path.read_bytes()
    except OSError as error:
        raise EditRefused(f"{path.name} cannot be read: {error.strerror}.") from None


def _hold_unchanged(path: Path, before: str, ours: str) -> None:
    now = _bytes(path)
    if hash_of(now) != before:
        raise ChangedOutside(now.decode("utf-8", errors="replace"), ours)


def _write(aside: Path, data: bytes, mode: int) -> None:
    flags = os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_BINARY", 0) | getattr(os, "O_NOFOLLOW", 0)
    handle = os.open(aside, flags, 0o600)  # Windows has the one flag, POSIX the other
    with open(handle, "wb") as file:
        file.write(data)
        file.flush()
        os.fsync(file.fileno())
    aside.chmod(mode)


def _make_sure_of_folder(folder: Path) -> None:
    if os.name != "posix":  # elsewhere a folder cannot be opened
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)
