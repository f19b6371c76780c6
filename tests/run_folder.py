"""What one run of the tests makes and all its workers share: a folder that is there for the run and gone after it."""

from __future__ import annotations

import atexit
import fcntl
import os
import pickle
import shutil
import tempfile
from collections.abc import Callable
from pathlib import Path
from typing import TypeVar

_NAME = "STORYMATHS_TEST_RUN"
Result = TypeVar("Result")


def run_folder() -> Path:
    """The folder of this run. Whoever asks first makes it; workers are started later and find its name.

    What Python compiles for one of the run's many processes is kept for the others, whatever the machine is used to.
    """
    if _NAME not in os.environ:
        os.environ[_NAME] = tempfile.mkdtemp(prefix="storymaths-tests-")
        os.environ.pop("PYTHONDONTWRITEBYTECODE", None)
        atexit.register(shutil.rmtree, os.environ[_NAME], ignore_errors=True)
    return Path(os.environ[_NAME])


def made_once(name: str, make: Callable[[Path], object]) -> Path:
    """A file or folder of this run: made by the first worker that asks for it, while the others wait."""
    made = run_folder() / name
    with (run_folder() / f"{name}.lock").open("w") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)
        if not made.exists():
            part = run_folder() / f"{name}.part"
            make(part)
            part.rename(made)
    return made


def worked_out_once(name: str, work_out: Callable[[], Result]) -> Result:
    """A value of this run: worked out by the first worker that asks for it, and read by the others."""
    kept = made_once(name, lambda file: file.write_bytes(pickle.dumps(work_out())))
    value: Result = pickle.loads(kept.read_bytes())
    return value
