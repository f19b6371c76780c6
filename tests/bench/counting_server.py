"""Serves a folder from this machine as a good host would, packed, and keeps count of the bytes."""

from __future__ import annotations

import gzip
import mimetypes
import threading
from collections import Counter
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from functools import lru_cache
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from urllib.parse import unquote, urlsplit

_PACKED = (".html", ".js", ".css", ".json", ".svg", ".xml", ".txt")


class Served:
    """A folder being served: its address, and the bytes of each file sent so far."""

    def __init__(self, address: str) -> None:
        self.address = address
        self.sent: Counter[str] = Counter()

    def bytes_of(self, *parts: str) -> int:
        """Bytes sent of files whose address holds one of some words; of all, when none are given."""
        return sum(size for name, size in self.sent.items() if not parts or any(part in name for part in parts))


@lru_cache(maxsize=20_000)
def _content(file: Path) -> bytes:
    plain = file.read_bytes()
    return gzip.compress(plain, 9) if file.suffix in _PACKED else plain


@contextmanager
def serving(folder: Path) -> Iterator[Served]:
    """The folder at an address of this machine, until the block ends."""

    class Handler(BaseHTTPRequestHandler):
        protocol_version = "HTTP/1.1"
        disable_nagle_algorithm = True

        def handle(self) -> None:
            with suppress(ConnectionError):  # a visitor who leaves while something is on its way
                super().handle()

        def do_GET(self) -> None:
            name = unquote(urlsplit(self.path).path).lstrip("/") or "index.html"
            file = folder / name
            if not file.is_file():
                self.send_response(404)
                self.send_header("Content-Length", "0")
                self.end_headers()
                return
            body = _content(file)
            served.sent[name] += len(body)
            self.send_response(200)
            self.send_header("Content-Type", mimetypes.guess_type(name)[0] or "application/octet-stream")
            if file.suffix in _PACKED:
                self.send_header("Content-Encoding", "gzip")
            self.send_header("Content-Length", str(len(body)))
            self.end_headers()
            self.wfile.write(body)

        def log_message(self, format: str, *args: object) -> None:
            """Says nothing."""

    server = ThreadingHTTPServer(("127.0.0.1", 0), Handler)
    served = Served(f"http://127.0.0.1:{server.server_port}/")
    threading.Thread(target=server.serve_forever, daemon=True).start()
    try:
        yield served
    finally:
        server.shutdown()
        server.server_close()
