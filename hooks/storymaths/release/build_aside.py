"""The site built into a folder of its own, by the program that builds it, in a process of its own."""

from __future__ import annotations

import ctypes
import errno
import os
import signal
import subprocess
import sys
from pathlib import Path

_NO_ROOM = ("No space left on device", "os error 28", "Disk quota exceeded", "File too large")
_SYSTEM = ctypes.CDLL(None)
_DIE_WITH_PARENT = 1
"""``PR_SET_PDEATHSIG`` of Linux's ``prctl``."""


class BuildFailed(Exception):
    """The build did not finish; what it said is the message."""


def build_aside(root: Path, folder: Path) -> None:
    """Builds the project at ``root`` into ``folder``. Raises ``BuildFailed``, or ``OSError`` when there is no room."""
    command = [sys.executable, "-m", "mkdocs", "build", "--quiet", "-f", str(root / "mkdocs.yml"), "-d", str(folder)]
    done = subprocess.run(
        command,
        cwd=root,
        env={**os.environ, "NO_MKDOCS_2_WARNING": "1"},
        capture_output=True,
        text=True,
        check=False,
        preexec_fn=_die_with_parent if sys.platform == "linux" else None,
    )
    if done.returncode:
        said = (done.stdout + done.stderr).strip()
        if any(words in said for words in _NO_ROOM):
            raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))
        raise BuildFailed(said or f"it ended with {done.returncode} and said nothing")


def _die_with_parent() -> None:
    # A build whose publish was killed would go on writing beside the next one.
    _SYSTEM.prctl(_DIE_WITH_PARENT, signal.SIGKILL)
