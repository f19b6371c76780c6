"""Two names on a disk changed for each other in one step, where the system can."""

from __future__ import annotations

import ctypes
import os
import sys
from pathlib import Path

_HERE = -100
"""AT_FDCWD of Linux: paths are from the working folder."""
_LINUX, _MAC = 2, 2
"""RENAME_EXCHANGE of Linux's ``renameat2`` (renameat2(2)); RENAME_SWAP of ``renamex_np`` on a Mac (its stdio.h, from memory)."""


def exchange(one: Path, other: Path) -> bool:
    """Changes the two, which are on one disk, for each other; False where it cannot be done and nothing was changed."""
    try:
        library = ctypes.CDLL(None)
        a, b = os.fsencode(one), os.fsencode(other)
        if sys.platform == "darwin":
            return int(library.renamex_np(a, b, _MAC)) == 0
        return int(library.renameat2(_HERE, a, _HERE, b, _LINUX)) == 0
    except (AttributeError, OSError, TypeError):  # a system, or a library of its own, without the call
        return False
