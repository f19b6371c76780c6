"""Serves a live project to this machine alone: pages as they are now, and word to an open page that it has changed."""

from __future__ import annotations

import os
import sys
import time
from collections.abc import Mapping
from functools import cache
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from urllib.parse import parse_qs, unquote, urlsplit

from ..build import NOT_FOUND
from ..check.program_fault import as_problem
from ..model.address import CONTENT
from ..scripts.join import joined
from .project import LiveProject

HOST = "127.0.0.1"
_OURS = "_live/"
"""What the server adds stands here: no page of a collection has a name with such a sign."""
_RELOAD, _CHANGED = f"{_OURS}reload.js", f"{_OURS}changed"
_WAIT = 25.0
"""Seconds until a page that waits for a change is told that there was none."""
_HTML = "text/html; charset=utf-8"
_TYPES: Mapping[str, str] = {
    ".html": _HTML,
    ".css": "text/css; charset=utf-8",
    ".js": "text/javascript; charset=utf-8",
    ".json": "application/json; charset=utf-8",
    ".csv": "text/csv; charset=utf-8",
    ".xml": "application/xml; charset=utf-8",
    ".svg": "image/svg+xml",
    ".png": "image/png",
    ".jpg": "image/jpeg",
    ".jpeg": "image/jpeg",
    ".webp": "image/webp",
    ".pdf": "application/pdf",
    ".woff2": "font/woff2",
    ".wasm": "application/wasm",
}
"""Of files by their endings: what the machine itself knows of them differs from one to the next."""


class LiveServer(ThreadingHTTPServer):
    """Answers each request in a thread of its own."""

    daemon_threads = True
    allow_reuse_address = os.name != "nt"  # there it would let two servers have one address

    def __init__(self, port: int) -> None:
        """Takes the port, or any that is free for 0; raises ``OSError``. ``project`` is to be set before it serves."""
        super().__init__((HOST, port), _Answer)
        self.address = f"http://{HOST}:{self.server_port}/"
        self.project: LiveProject

    def handle_error(self, request: object, client_address: object) -> None:
        """A browser that goes away in the middle of a file is nothing to speak of."""
        error = sys.exception()
        if isinstance(error, Exception) and not isinstance(error, OSError):
            print(as_problem(error, CONTENT), file=sys.stderr, flush=True)


class _Answer(BaseHTTPRequestHandler):
    server: LiveServer
    protocol_version = "HTTP/1.1"
    timeout = 2 * _WAIT

    def do_GET(self) -> None:
        """Answers with a page, a file, or word of a change."""
        asked = urlsplit(self.path)
        address = unquote(asked.path).lstrip("/")
        if not self._is_from_here():
            return self._send(b"This is shown on its own machine only.", "text/plain; charset=utf-8", 403)
        try:
            if address == _CHANGED:
                self._tell_of_change(parse_qs(asked.query))
            elif address == _RELOAD:
                self._send(_reload(), _TYPES[".js"])
            else:
                self._answer(f"{address}index.html" if not address or address.endswith("/") else address)
        except OSError:
            raise
        except Exception as error:
            print(as_problem(error, f"{CONTENT}{address}"), file=sys.stderr, flush=True)
            self._send(f"{as_problem(error, CONTENT + address)}\n".encode(), "text/plain; charset=utf-8", 500)

    do_HEAD = do_GET

    def _answer(self, address: str) -> None:
        project = self.server.project
        page = project.page(address)
        if page is not None:
            return self._send(_told_to_reload(page, address, project.mark(address)), _HTML)
        file = project.file(address)
        if file is None:
            gone = project.file(NOT_FOUND)
            return self._send(_bytes_of(gone) if gone is not None else b"", _HTML, 404)
        self._send(_bytes_of(file), _TYPES.get(Path(address).suffix, "application/octet-stream"))

    def _tell_of_change(self, asked: Mapping[str, list[str]]) -> None:
        """Answers when the page asked about is no longer as its mark says; or that it is, after a while."""
        address, mark = asked.get("page", [""])[0], asked.get("mark", [""])[0]
        project, until = self.server.project, time.monotonic() + _WAIT
        number = project.look()
        while (same := project.mark(address) == mark) and (left := until - time.monotonic()) > 0:
            number = project.changed_since(number, left)
        self._send(b"same" if same else b"changed", "text/plain; charset=utf-8")

    def _is_from_here(self) -> bool:
        """Whether the browser knows this server by an address of this machine, and not by a name that leads here."""
        host = self.headers.get("Host", HOST).rpartition(":")[0] or self.headers.get("Host", HOST)
        return host in (HOST, "localhost", "[::1]")

    def _send(self, content: bytes, what: str, code: int = 200) -> None:
        self.send_response(code)
        self.send_header("Content-Type", what)
        self.send_header("Content-Length", str(len(content)))
        self.send_header("Cache-Control", "no-store")
        self.end_headers()
        if self.command != "HEAD":
            self.wfile.write(content)

    def log_message(self, format: str, *args: object) -> None:
        """Says nothing of each file that a browser fetches."""


@cache
def _reload() -> bytes:
    return f"{joined('live/reload.js')};\n".encode()


def _told_to_reload(page: bytes, address: str, mark: str) -> bytes:
    """A page with the script that waits for its change, and all else as it is."""
    above = "../" * address.count("/")
    script = f'<script src="{above}{_RELOAD}" data-page="{address}" data-mark="{mark}" defer></script>\n'
    body, end, rest = page.rpartition(b"</body>")
    return body + script.encode() + end + rest


def _bytes_of(file: bytes | str | Path) -> bytes:
    if isinstance(file, Path):
        return file.read_bytes()
    return file if isinstance(file, bytes) else file.encode()
