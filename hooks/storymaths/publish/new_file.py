"""A file that is written whole or not at all, and never in place of another."""

from __future__ import annotations

import os
from pathlib import Path


def write_new(path: Path, content: bytes) -> None:
    """Writes a file that is not there yet, in a folder that is. Raises ``FileExistsError`` where it is, and ``OSError``."""
    part = path.with_name(f".{path.name[:100]}.{os.getpid()}.part")  # what begins with a dot is passed over
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
