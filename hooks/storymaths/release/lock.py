"""One publishing at a time: a lock that the system lets go of when its holder ends, in whatever way."""

from __future__ import annotations

import os
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

from .refused import Refused

if sys.platform == "win32":
    import msvcrt
    import time

    _FAR = 1_000_000
    """The byte that is locked: one that is locked cannot be read, and the holder's number stands at the start."""

    def _take(handle: int, wait: bool) -> None:
        os.lseek(handle, _FAR, os.SEEK_SET)
        while True:
            try:
                return msvcrt.locking(handle, msvcrt.LK_NBLCK, 1)
            except OSError as error:
                if not wait:
                    raise BlockingIOError from error
                time.sleep(0.5)
else:
    import fcntl

    def _take(handle: int, wait: bool) -> None:
        fcntl.flock(handle, fcntl.LOCK_EX | (0 if wait else fcntl.LOCK_NB))


@contextmanager
def hold_lock(folder: Path, wait: bool, waiting: Callable[[], None]) -> Iterator[None]:
    """Holds the lock of a folder of releases. Raises ``Refused`` if another holds it, or waits if asked to.

    ``waiting`` is called once before a wait. The lock is the system's, so none is left behind by a killed run.
    """
    with (folder / "lock").open("a+", encoding="utf-8") as file:
        try:
            _take(file.fileno(), False)
        except BlockingIOError:
            if not wait:
                file.seek(0)
                raise Refused(
                    f"Another publish to this place is running (process {file.read().strip() or 'unknown'}). "
                    "Try again when it is done, or use --wait."
                ) from None
            waiting()
            _take(file.fileno(), True)
        file.truncate(0)
        file.write(str(os.getpid()))
        file.flush()
        yield
