"""The command ``serve``: the collection in a browser, each page drawn again when what it shows changes."""

from __future__ import annotations

import argparse
import errno
import signal
import sys
import threading
import webbrowser
from pathlib import Path
from types import FrameType

from ..live.project import LiveProject
from ..live.server import LiveServer
from .command import Command, Misused, in_project
from .terminal import as_text, count_problems

_HIGHEST_PORT = 65535
_DAY = 86_400.0


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Where, and whether a browser is opened."""
    parser.add_argument("--port", type=int, default=8000, help="the number at the end of its address (default: 8000)")
    parser.add_argument("--open", action="store_true", help="open it in the browser as well")


def run(root: Path, options: argparse.Namespace) -> int:
    """Serves until it is stopped. Raises ``Misused`` where the port cannot be had."""
    server = _take(options.port)
    for name in ("SIGTERM", "SIGHUP"):  # the second is not known everywhere
        if hasattr(signal, name):
            signal.signal(signal.Signals[name], _stop)
    print("Reading the collection …", flush=True)
    server.project = project = LiveProject(root, server.address)
    try:
        project.start()
        threading.Thread(target=_tell_problems, args=(project,), daemon=True).start()
        print(f"Shown at {server.address} while you write. Press Ctrl and C to stop.", flush=True)
        if options.open:
            webbrowser.open(server.address)
        server.serve_forever()
    finally:
        project.close()
    return 0


def _take(port: int) -> LiveServer:
    if not 0 <= port <= _HIGHEST_PORT:
        raise Misused(f"There is no port {port}: a port is a number up to {_HIGHEST_PORT}.")
    try:
        return LiveServer(port)
    except OSError as error:
        if error.errno == errno.EADDRINUSE:
            why = f"Port {port} is in use: by another serve that is still running, perhaps, or by another program"
        else:
            why = f"Port {port} cannot be used ({(error.strerror or 'no reason given').lower()})"
        raise Misused(
            f"{why}.\nFix: stop that, or choose another port: storymaths serve --port {port % 1000 + 8001}"
        ) from None


def _stop(number: int, frame: FrameType | None) -> None:
    """Being told to end is what Ctrl and C is."""
    signal.raise_signal(signal.SIGINT)


def _tell_problems(project: LiveProject) -> None:
    """Says in the terminal what is wrong, whenever that changes."""
    number, told = 0, ""
    while True:
        reading = project.build.reading
        problems = len(reading.problems)
        report = as_text(reading.problems, reading.warnings)
        if report != told:
            print(f"{count_problems(problems) if problems else 'No problems'}.\n{report}", file=sys.stderr, flush=True)
        told = report
        number = project.changed_since(number, _DAY)


COMMAND = Command(add_arguments, in_project(run))
