"""A file that is written whole or not at all, and never in place of another."""

from __future__ import annotations

import os
import time
from contextlib import suppress
from pathlib import Path

_PART = ".part"
_LEFT = 60.0
"""Seconds after which what is written beside its place, and was not touched since, was left there by a killed run."""


def beside(path: Path, mark: str) -> Path:
    """Where a file is written before it is put in place; what killed runs left of it there goes. A dot hides it from readers."""
    opens = f".{path.name[:100]}."
    for old in path.parent.iterdir():
        if old.name.startswith(opens) and old.name.endswith(_PART):
            with suppress(OSError):  # it is another's, who may be at it
                if time.time() - old.stat().st_mtime > _LEFT:
                    old.unlink()
    return path.with_name(f"{opens}{mark}{_PART}")


def write_new(path: Path, content: bytes) -> None:
    """Writes a file that is not there yet, in a folder that is. Raises ``FileExistsError`` where it is, and ``OSError``."""
    part = beside(path, str(os.getpid()))
    part.unlink(missing_ok=True)
    try:
        with part.open("xb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        _name(part, path)
    finally:
        part.unlink(missing_ok=True)


def _name(part: Path, path: Path) -> None:
    """Gives what is written its name in one step, which fails where the name is taken."""
    try:
        os.link(part, path)
    except FileExistsError:
        raise
    except OSError:  # a memory stick knows no second names
        if os.path.lexists(path):
            raise FileExistsError(path) from None
        part.rename(path)
