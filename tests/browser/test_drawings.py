"""Drawings in a browser: what would be served of hostile ones asks nobody for anything, by itself or as a picture.

What is shown here is written again from hostile drawings whether they are refused or not, so that what writes them is
held without the rule that refuses them.
"""

from __future__ import annotations

import threading
from collections.abc import Iterator
from contextlib import contextmanager
from html import escape
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path

from drawings import OPEN, hostile, ordinary
from playwright.sync_api import Page
from storymaths.parse.drawing import read_drawing

from .server import serving


@contextmanager
def listening() -> Iterator[tuple[str, list[str]]]:
    """The address of a listener on this machine, and all it is asked for."""
    heard: list[str] = []

    class _Listener(BaseHTTPRequestHandler):
        def do_GET(self) -> None:
            heard.append(self.path)
            self.send_error(404)

        def log_message(self, format: str, *args: object) -> None:
            """Says nothing."""

    server = ThreadingHTTPServer(("127.0.0.1", 0), _Listener)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    yield f"http://127.0.0.1:{server.server_port}", heard
    server.shutdown()
    server.server_close()


def show(page: Page, folder: Path, drawings: dict[str, str]) -> list[str]:
    """All drawings on one page, each by itself and as a picture; the pictures that show nothing."""
    for name, text in drawings.items():
        (folder / name).write_text(text, encoding="utf-8")
    shown = "".join(f'<iframe src="{escape(name)}"></iframe><img alt="" src="{escape(name)}">' for name in drawings)
    (folder / "all.html").write_text(f"<!doctype html><title>All</title>{shown}", encoding="utf-8")
    with serving(folder) as base:
        page.goto(f"{base}all.html", wait_until="networkidle")
        return page.evaluate("[...document.images].filter((one) => !one.naturalWidth).map((one) => one.src)")


def test_what_is_served_of_a_hostile_drawing_asks_nobody(page: Page, tmp_path: Path) -> None:
    with listening() as (address, heard):
        read = {f"{n}.svg": read_drawing(one.text).text for n, one in enumerate(hostile(address))}
        unseen = show(page, tmp_path, {name: text for name, text in read.items() if text})
        assert heard == []
        assert unseen == [], "what is served is a drawing"
        as_it_was = f'{OPEN}<style>@import "{address}/as-it-was";</style></svg>'
        show(page, tmp_path, {"control.svg": as_it_was})
        assert heard == ["/as-it-was"], "the listener can hear"


def test_what_is_served_of_an_ordinary_drawing_is_seen(page: Page, tmp_path: Path) -> None:
    read = {f"{n}.svg": read_drawing(one.text).text for n, one in enumerate(ordinary())}
    assert show(page, tmp_path, read) == []
