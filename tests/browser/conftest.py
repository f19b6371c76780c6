"""The site built once and served to this machine only, and a browser to read it with."""

from __future__ import annotations

import functools
import subprocess
import sys
import threading
from collections.abc import Iterator
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, sync_playwright
from project import ROOT

from .get_browser import find_browser

FLAGS = (
    "--headless --no-sandbox --disable-gpu --disable-quic --no-first-run --disable-background-networking "
    "--disable-component-update --disable-sync"
).split()


@pytest.fixture(scope="session")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The folder of the finished site."""
    folder = tmp_path_factory.mktemp("site")
    subprocess.run(
        [sys.executable, "-m", "mkdocs", "build", "-q", "-f", str(ROOT / "mkdocs.yml"), "-d", str(folder)],
        check=True,
    )
    return folder


class _Quiet(SimpleHTTPRequestHandler):
    extensions_map = {**SimpleHTTPRequestHandler.extensions_map, ".woff2": "font/woff2"}  # noqa: RUF012

    def log_message(self, format: str, *args: object) -> None:
        """Says nothing: a test's output is its own."""


class _Server(ThreadingHTTPServer):
    def handle_error(self, request: object, client_address: object) -> None:
        """Says nothing when a browser goes away in the middle of a file."""
        if not isinstance(sys.exception(), ConnectionError):
            super().handle_error(request, client_address)  # type: ignore[arg-type]


@pytest.fixture(scope="session")
def base(site: Path) -> Iterator[str]:
    """The address of the site, with a closing slash."""
    server = _Server(("127.0.0.1", 0), functools.partial(_Quiet, directory=str(site)))
    threading.Thread(target=server.serve_forever, daemon=True).start()
    yield f"http://127.0.0.1:{server.server_port}/"
    server.shutdown()
    server.server_close()


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """A Chromium-family browser: one that is on this machine, else Playwright's own."""
    with sync_playwright() as playwright:
        launched = playwright.chromium.launch(executable_path=find_browser(), args=FLAGS)
        yield launched
        launched.close()


@pytest.fixture
def page(browser: Browser) -> Iterator[Page]:
    """A page of a context of its own, so that nothing is kept between tests."""
    context = browser.new_context()
    yield context.new_page()
    context.close()
