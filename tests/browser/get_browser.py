"""Sees that a Chromium-family browser is there for the browser tests, and gets one if not.

Run as ``python tests/browser/get_browser.py`` before the tests. Best is the Chromium without windows of its own: to open
a page costs a whole one ten times as much, and there are some five hundred to open. It is got from Debian as root; else
any that is there is used; else Playwright's own; else this fails in one line.
"""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from pathlib import Path

from playwright.sync_api import sync_playwright

WINDOWLESS = "chromium-headless-shell"
NAMES = (
    WINDOWLESS,
    "chromium",
    "chromium-browser",
    "google-chrome",
    "google-chrome-stable",
    "microsoft-edge",
    "brave-browser",
)

FLAGS = (
    "--headless --no-sandbox --disable-gpu --disable-quic --no-first-run --disable-background-networking "
    "--disable-component-update --disable-sync --process-per-site --font-render-hinting=none"
).split()
"""Without windows, Chromium would fit letterforms to the dots of a screen, and a line of print would take more room."""


def find_browser() -> str | None:
    """The path of a Chromium-family browser, or None."""
    for name in NAMES:
        path = shutil.which(name)
        if path:
            return path
    return _playwrights_own()


def _playwrights_own() -> str | None:
    with sync_playwright() as playwright:
        path = playwright.chromium.executable_path
    return path if Path(path).exists() else None


def get_browser() -> str | None:
    """A browser's path, installing one if need be and if it can be had."""
    if not shutil.which(WINDOWLESS) and shutil.which("apt-get") and hasattr(os, "geteuid") and os.geteuid() == 0:
        _tried(["apt-get", "update", "-qq"])
        _tried(["apt-get", "install", "-y", "-qq", WINDOWLESS])
    if not find_browser():
        _tried([sys.executable, "-m", "playwright", "install", "chromium"])
    return find_browser()


def _tried(command: list[str]) -> None:
    environment = {**os.environ, "DEBIAN_FRONTEND": "noninteractive"}
    subprocess.run(command, env=environment, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, check=False)


if __name__ == "__main__":
    browser = get_browser()
    if browser is None:
        sys.exit("No Chromium-family browser was found and none could be installed: install Chromium, then test again.")
    print(f"Browser tests use {browser}")
