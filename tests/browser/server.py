"""Serves a folder to this machine only, as the plainest server of files does."""

from __future__ import annotations

import functools
import sys
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path


class _Quiet(SimpleHTTPRequestHandler):
    extensions_map = {**SimpleHTTPRequestHandler.extensions_map, ".woff2": "font/woff2"}  # noqa: RUF012

    def log_message(self, format: str, *args: object) -> None:
        """Says nothing: a test's output is its own."""


class _Server(ThreadingHTTPServer):
    def handle_error(self, request: object, client_address: object) -> None:
        """Says nothing when a browser goes away in the middle of a file."""
        if not isinstance(sys.exception(), ConnectionError):
            super().handle_error(request, client_address)  # type: ignore[arg-type]


@contextmanager
def serving(folder: Path) -> Iterator[str]:
    """The address of the folder, with a closing slash, until the block ends."""
    server = _Server(("127.0.0.1", 0), functools.partial(_Quiet, directory=str(folder)))
    threading.Thread(target=server.serve_forever, daemon=True).start()
    yield f"http://127.0.0.1:{server.server_port}/"
    server.shutdown()
    server.server_close()
