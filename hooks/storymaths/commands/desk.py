"""The command ``desk``: the collection in the author's own browser, to write in."""

from __future__ import annotations

import argparse
import webbrowser
from pathlib import Path

from .command import FAILED, Command, Misused, in_project

_HIGHEST_PORT = 65535


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Where, and whether a browser is opened."""
    parser.add_argument("--port", type=int, default=0, help="the number in its address (default: any that is free)")
    parser.add_argument("--stay", action="store_true", help="only print the address: open no browser")


def run(root: Path, options: argparse.Namespace) -> int:
    """Serves the desk until it is stopped. Raises ``Misused``."""
    from ..desk.server import serve_desk  # noqa: PLC0415 - the other commands need no server

    def tell(address: str) -> None:
        print(
            f"Your desk is at\n\n  {address}\n\nOnly this machine can open it, and only with that address.", flush=True
        )
        print("It stops when you press Ctrl and C here, or when its tabs have been closed for a while.", flush=True)
        if not options.stay:
            webbrowser.open(address)

    if not 0 <= options.port <= _HIGHEST_PORT:
        raise Misused(f"There is no port {options.port}: a port is a number up to {_HIGHEST_PORT}.")
    print("Reading the collection …", flush=True)
    try:
        serve_desk(root, options.port, tell)
    except OSError as error:
        raise Misused(
            f"The desk cannot be opened there: {(error.strerror or 'no reason given').lower()}.", FAILED
        ) from None
    return 0


COMMAND = Command(add_arguments, in_project(run))
