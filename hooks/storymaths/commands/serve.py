"""The command ``serve``: the collection in a browser, drawn again whenever a file changes."""

from __future__ import annotations

import argparse
from pathlib import Path

from .command import Command, in_project
from .frame import run_frame


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Where, and whether a browser is opened."""
    parser.add_argument("--port", type=int, default=8000, help="the number at the end of its address (default: 8000)")
    parser.add_argument("--open", action="store_true", help="open it in the browser as well")


def run(root: Path, options: argparse.Namespace) -> int:
    """Serves until it is stopped."""
    print("Press Ctrl and C to stop.", flush=True)
    return run_frame(root, "serve", "--dev-addr", f"127.0.0.1:{options.port}", *(["--open"] if options.open else []))


COMMAND = Command(add_arguments, in_project(run))
