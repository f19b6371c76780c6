"""The text index: Pagefind run over the built site, its own program from its own wheel."""

from __future__ import annotations

import subprocess
import sys
import time
from pathlib import Path


class IndexFailed(RuntimeError):
    """The indexer did not finish; its output is the message."""


def build_text_index(site: Path) -> float:
    """Writes ``pagefind/`` into a built site. Returns the seconds it took. Raises ``IndexFailed``."""
    started = time.perf_counter()
    done = subprocess.run(
        [sys.executable, "-m", "pagefind", "--site", str(site), "--quiet"], capture_output=True, text=True, check=False
    )
    if done.returncode:
        raise IndexFailed((done.stderr or done.stdout).strip())
    return time.perf_counter() - started
