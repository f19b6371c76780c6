"""How a file looked when it was read, so that what has not changed is not read again."""

from __future__ import annotations

import hashlib
import os
import time
from pathlib import Path

_SETTLED = 2.0
"""Seconds after which a later change cannot carry the time of this one: FAT, the coarsest, counts in twos."""

Mark = tuple[int, ...]


def mark_of(path: Path | str) -> Mark | None:
    """Equal for two looks at a file that has not changed between; None for one just written, or that cannot be looked at."""
    try:
        about = os.lstat(path)
    except OSError:
        return None
    if abs(time.time() - about.st_mtime) < _SETTLED:
        return None
    return about.st_mode, about.st_ino, about.st_size, about.st_mtime_ns, about.st_ctime_ns


def digest_of(data: bytes) -> bytes:
    """Equal for two files that hold the same."""
    return hashlib.blake2b(data, digest_size=16).digest()
