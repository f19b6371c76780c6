"""One publishing at a time: a lock that the system lets go of when its holder ends, in whatever way."""

from __future__ import annotations

import fcntl
import os
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

from .refused import Refused


@contextmanager
def hold_lock(folder: Path, wait: bool, waiting: Callable[[], None]) -> Iterator[None]:
    """Holds the lock of a folder of releases. Raises ``Refused`` if another holds it, or waits if asked to.

    ``waiting`` is called once before a wait. The lock is ``flock``'s, so none is left behind by a killed run.
    """
    with (folder / "lock").open("a+", encoding="utf-8") as file:
        try:
            fcntl.flock(file, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except BlockingIOError:
            if not wait:
                file.seek(0)
                raise Refused(
                    f"Another publish to this place is running (process {file.read().strip() or 'unknown'}). "
                    "Try again when it is done, or use --wait."
                ) from None
            waiting()
            fcntl.flock(file, fcntl.LOCK_EX)
        file.truncate(0)
        file.write(str(os.getpid()))
        file.flush()
        yield
