"""The author's command for tests: within this process, which is quick, or as the program that an author starts."""

from __future__ import annotations

import contextlib
import io
import os
import subprocess
import sys
from contextlib import AbstractContextManager
from functools import lru_cache
from pathlib import Path
from unittest.mock import patch

from project import PROJECT, ROOT
from storymaths.commands.program import main
from storymaths.reading import ProjectReader

Done = subprocess.CompletedProcess[str]


def storymaths(*arguments: str, folder: Path = PROJECT) -> Done:
    """The command run in a project's folder: its exit code, and what it printed."""
    printed, complained = (io.TextIOWrapper(io.BytesIO(), "utf-8") for _ in range(2))
    with (
        contextlib.chdir(folder),
        contextlib.redirect_stdout(printed),
        contextlib.redirect_stderr(complained),
        reading_again(),
    ):
        try:
            code = main(arguments)
        except SystemExit as left:  # how argparse leaves when it is misused, or has given its help
            code = left.code if isinstance(left.code, int) else 1
    return Done(arguments, code, _text_of(printed), _text_of(complained))


def reading_again() -> AbstractContextManager[object]:
    """Commands read a project that one of them has read before as ``serve`` does: what has not changed is kept.

    ``test_reading_again`` holds that nothing is told otherwise.
    """
    return patch("storymaths.reading.ProjectReader", lambda root: _reader(root.resolve()))


@lru_cache(maxsize=3)
def _reader(root: Path) -> ProjectReader:
    return ProjectReader(root)


def storymaths_as_a_program(*arguments: str, folder: Path = PROJECT) -> Done:
    """The same in a process of its own, as a shell starts it."""
    environment = {**os.environ, "PYTHONPATH": str(ROOT / "hooks")}
    command = [sys.executable, "-m", "storymaths", *arguments]
    return subprocess.run(command, cwd=folder, env=environment, capture_output=True, text=True, check=False)


def _text_of(stream: io.TextIOWrapper) -> str:
    stream.flush()
    stream.seek(0)
    return stream.read()
