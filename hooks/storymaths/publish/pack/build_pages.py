"""The pages of one series, built as the whole site is: by MkDocs, in a process of its own."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

ONLY = "STORYMATHS_SERIES"
"""The environment variable that ``mkdocs.yml`` reads as ``extra: only_series``."""


class BuildFailed(RuntimeError):
    """The pages could not be built; why is the message."""


def build_pages(root: Path, series: str, books: tuple[str, ...], folder: Path) -> None:
    """Builds the pages of a series into a folder. Raises ``BuildFailed``."""
    command = [sys.executable, "-m", "mkdocs", "build", "--quiet"]
    command += ["--config-file", str(root / "mkdocs.yml"), "--site-dir", str(folder)]
    environment = {**os.environ, ONLY: series, "NO_MKDOCS_2_WARNING": "1"}
    done = subprocess.run(command, cwd=root, env=environment, capture_output=True, text=True, check=False)
    if done.returncode:
        raise BuildFailed((done.stderr or done.stdout).strip() or "MkDocs gave no reason")
    built = {path.parent.name for path in folder.glob("books/*/index.html")}
    if built - {*books}:
        raise BuildFailed(f'mkdocs.yml has no line `only_series: !ENV [{ONLY}, ""]` under extra')
