"""What is published is on the disk and not only in memory, and a web server may read it, whatever the system."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

_SHUTS_NOBODY_OUT = 0o022


@contextmanager
def readable_by_all() -> Iterator[None]:
    """What is written meanwhile everybody may read: a web server has a user of its own, and a umask may shut it out."""
    before = os.umask(_SHUTS_NOBODY_OUT)
    try:
        yield
    finally:
        os.umask(before)


def make_all_last() -> None:
    """Sees to it that files written are on the disk: thousands at once take a moment, one after another many seconds."""
    if sys.platform != "win32":  # which has no such call, and writes what is closed before long
        os.sync()


def make_names_last(folder: Path) -> None:
    """Sees to it that names changed in a folder are on the disk."""
    if sys.platform == "win32":  # where a folder cannot be opened as a file
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)
