"""The school pack of the demonstration for tests: made once, as a publisher makes it; and unpacked, as a school does."""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
import zipfile
from functools import lru_cache
from pathlib import Path

from project import ROOT, collection

SERIES = "a-term-on-cockle-row"
VERSION = collection().series[SERIES].fields.version
_KEPT = tempfile.TemporaryDirectory(prefix="packs-")


def pack(folder: Path, out: Path, *more: str, seed: str = "0") -> subprocess.CompletedProcess[str]:
    """``storymaths pack`` in a project's folder."""
    environment = {**os.environ, "PYTHONPATH": str(ROOT / "hooks"), "PYTHONHASHSEED": seed}
    command = [sys.executable, "-m", "storymaths", "pack", SERIES, "--out", str(out), *more]
    return subprocess.run(command, cwd=folder, env=environment, capture_output=True, text=True, check=False)


@lru_cache(maxsize=1)
def made() -> tuple[Path, str]:
    """The pack, and what was said when it was made."""
    file = Path(_KEPT.name) / "pack.zip"
    done = pack(ROOT, file)
    assert done.returncode == 0, done.stdout + done.stderr
    return file, done.stdout


@lru_cache(maxsize=1)
def unpacked() -> Path:
    """The folder a school has after unpacking it."""
    folder = Path(_KEPT.name) / "unpacked"
    with zipfile.ZipFile(made()[0]) as zipped:
        zipped.extractall(folder)
    return folder
