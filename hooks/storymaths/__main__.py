"""The program: ``storymaths``, or ``python -m storymaths``.

Until it is loaded, Ctrl and C ends it without a word: there is nothing yet that could put things away or say so. What
Python says while it starts itself is beyond a program's reach.
"""

# What stands behind ``signal``, built into Python: that module would be loaded first, which is long enough to be stopped in.
from _signal import SIG_DFL, SIGINT, signal

signal(SIGINT, SIG_DFL)

from .commands.program import run  # noqa: E402 - loading takes long enough to be stopped


def start() -> None:
    """Runs it."""
    run()


if __name__ == "__main__":
    start()
