"""The program: ``storymaths``, or ``python -m storymaths``.

Until it is loaded, Ctrl and C ends it without a word: there is nothing yet that could put things away or say so.
"""

import signal

signal.signal(signal.SIGINT, signal.SIG_DFL)

from .commands.program import run  # noqa: E402 - loading takes long enough to be stopped


def start() -> None:
    """Runs it."""
    run()


if __name__ == "__main__":
    start()
