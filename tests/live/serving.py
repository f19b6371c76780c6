"""``storymaths serve`` as an author starts it, in a process of its own."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from project import ROOT


@dataclass(frozen=True)
class Served:
    """A collection that is served: where, by which process, and its folder."""

    address: str
    process: subprocess.Popen[str]
    project: Path


@contextmanager
def storymaths_serve(project: Path, port: int = 0) -> Iterator[Served]:
    """Serves a project at a port, any that is free for 0, until the block ends."""
    process = subprocess.Popen(
        [sys.executable, "-m", "storymaths", "serve", "--port", str(port)],
        cwd=project, env={**os.environ, "PYTHONPATH": str(ROOT / "hooks")},
        stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True,
    )  # fmt: skip
    try:
        assert process.stdout is not None
        said = ""
        while "Shown at " not in said:
            line = process.stdout.readline()
            assert line, f"it ended: {said}"
            said += line
        yield Served(said.partition("Shown at ")[2].split()[0], process, project)
    finally:
        process.kill()
        process.wait()
