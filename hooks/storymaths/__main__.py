"""The program: ``storymaths``, or ``python -m storymaths``.

Until it is loaded, Ctrl and C ends it without a word: there is nothing yet that could put things away or say so. What
Python says while it starts itself is beyond a program's reach.
"""

try:
    import signal

    signal.signal(signal.SIGINT, signal.SIG_DFL)
except KeyboardInterrupt:  # loading even that takes long enough to be stopped in
    raise SystemExit(130) from None

from .commands.program import run


def start() -> None:
    """Runs it."""
    run()


if __name__ == "__main__":
    start()
