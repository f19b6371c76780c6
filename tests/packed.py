"""The school pack of the frozen collection: made once a run, as a publisher makes it; and unpacked, as a school does."""

from __future__ import annotations

import os
import subprocess
import sys
import zipfile
from functools import lru_cache
from pathlib import Path

from built import kept
from command import storymaths
from project import ROOT, collection
from run_folder import made_once

SERIES = "a-term-on-plover-quay"
VERSION = collection().series[SERIES].fields.version


def pack(folder: Path, out: Path, *more: str, seed: str = "0") -> subprocess.CompletedProcess[str]:
    """``storymaths pack`` as a program, in a project's folder."""
    environment = {**os.environ, "PYTHONPATH": str(ROOT / "hooks"), "PYTHONHASHSEED": seed}
    command = [sys.executable, "-m", "storymaths", "pack", SERIES, "--out", str(out), *more]
    return subprocess.run(command, cwd=folder, env=environment, capture_output=True, text=True, check=False)


@lru_cache(maxsize=1)
def made() -> tuple[Path, str]:
    """The pack, and what was said when it was made."""
    folder = made_once("pack", _make)
    return folder / "pack.zip", (folder / "said.txt").read_text(encoding="utf-8")


@lru_cache(maxsize=1)
def unpacked() -> Path:
    """The folder a school has after unpacking it."""
    return made_once("unpacked", _unpack)


def _make(folder: Path) -> None:
    kept()
    folder.mkdir()
    done = storymaths("pack", SERIES, "--out", str(folder / "pack.zip"))
    assert done.returncode == 0, done.stdout + done.stderr
    (folder / "said.txt").write_text(done.stdout, encoding="utf-8")


def _unpack(folder: Path) -> None:
    with zipfile.ZipFile(made()[0]) as zipped:
        zipped.extractall(folder)
