"""Opens a word processor's file as a stranger's: nothing larger than it may be, nothing that runs, loads or multiplies."""

from __future__ import annotations

import zipfile
from pathlib import Path
from xml.etree import ElementTree

from ...model.old_plans import OldPlanLimits
from .lines import Unreadable

_SAVE_AGAIN = "Open it in your word processor, copy what you need into a new document, and save that."


def read_bytes(path: Path, limits: OldPlanLimits) -> bytes:
    """A file's bytes. Raises ``Unreadable``."""
    try:
        size = path.stat().st_size
        if size > limits.file_bytes:
            raise Unreadable(
                f"It is too large: {size:,} bytes, and at most {limits.file_bytes:,} are read. Take its pictures out."
            )
        return path.read_bytes()
    except OSError as error:
        raise Unreadable(f"It cannot be opened: {error.strerror}.") from None


def read_parts(path: Path, names: tuple[str, ...], limits: OldPlanLimits) -> list[ElementTree.Element | None]:
    """Some XML files of a zip, parsed; None for one that is not there. Raises ``Unreadable``."""
    read_bytes(path, limits)
    try:
        with zipfile.ZipFile(path) as file:
            _look_through(file, limits)
            return [_tree(file, name, limits) for name in names]
    except (zipfile.BadZipFile, NotImplementedError, RuntimeError, OSError, EOFError, ValueError):
        raise Unreadable(f"It is damaged, locked with a password, or no word processor's file. {_SAVE_AGAIN}") from None


def _look_through(file: zipfile.ZipFile, limits: OldPlanLimits) -> None:
    entries = file.infolist()
    if len(entries) > limits.files or sum(entry.file_size for entry in entries) > limits.unpacked_bytes:
        raise Unreadable(f"It unpacks to far more than a plan holds. {_SAVE_AGAIN}")
    for entry in entries:
        name = entry.filename.lower()
        if "vbaproject" in name or name.startswith(("basic/", "scripts/")) or "activex" in name:
            raise Unreadable(f"It holds macros, which are programs. {_SAVE_AGAIN}")
        if name.endswith(".rels") and _loads(_bytes(file, entry.filename, limits)):
            raise Unreadable(f"It loads something from another place when it is opened. {_SAVE_AGAIN}")


def _loads(relations: bytes) -> bool:
    """Whether something is fetched from elsewhere; a link somebody may follow is not."""
    return any(
        one.get("TargetMode", "").lower() == "external" and not one.get("Type", "").endswith("/hyperlink")
        for one in _parsed(relations).iter()
    )


def _tree(file: zipfile.ZipFile, name: str, limits: OldPlanLimits) -> ElementTree.Element | None:
    return _parsed(_bytes(file, name, limits), limits.nested) if name in file.namelist() else None


def _bytes(file: zipfile.ZipFile, name: str, limits: OldPlanLimits) -> bytes:
    # What a zip says of sizes may be untrue: no more is unpacked than may be.
    with file.open(name) as part:
        content = part.read(limits.part_bytes + 1)
    if len(content) > limits.part_bytes:
        raise Unreadable(f"It unpacks to far more than a plan holds. {_SAVE_AGAIN}")
    return content


def _parsed(content: bytes, nested: int = 0) -> ElementTree.Element:
    # The encodings a word processor writes hold no zero bytes; with UTF-16 a declaration could pass unseen.
    if b"<!DOCTYPE" in content or b"<!ENTITY" in content or b"\0" in content:
        raise Unreadable(f"It declares parts of itself that multiply when read. {_SAVE_AGAIN}")
    try:
        root = ElementTree.fromstring(content)
    except ElementTree.ParseError:
        raise Unreadable(f"It is damaged. {_SAVE_AGAIN}") from None
    level, depth = [root], 0
    while nested and level:
        level, depth = [inner for one in level for inner in one], depth + 1
        if depth > nested:
            raise Unreadable(f"Its parts stand inside each other {nested} deep and more. {_SAVE_AGAIN}")
    return root
