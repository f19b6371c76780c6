"""A first visit to a session: how much comes over the wire, from a server that packs text."""

from __future__ import annotations

import gzip
from urllib.parse import urlsplit

import pytest
from playwright.sync_api import Browser, Response

from .pages_of_every_kind import TEMPLATES

MOST, MOST_TO_FIND = 120_000, 60_000
"""Bytes over the wire for a session page's first visit, and for the finder's with its list, without pictures."""
PACKED = (".woff2", ".svg", ".png")
"""Letterforms are packed already; pictures are not counted."""


def weight_of(response: Response) -> int:
    """Bytes over the wire from a server that packs text, as nearly all do."""
    path = urlsplit(response.url).path
    body = response.body()
    return len(body) if path.endswith(PACKED) else len(gzip.compress(body, 6))


@pytest.mark.parametrize(
    ("name", "most"),
    [("session", MOST), ("session with signs", MOST), ("home activity", MOST), ("story", MOST), ("find", MOST_TO_FIND)],
)
def test_a_first_visit_is_light(browser: Browser, base: str, name: str, most: int) -> None:
    context = browser.new_context()
    page = context.new_page()
    got: list[Response] = []

    def note(response: Response) -> None:
        got.append(response)

    page.on("response", note)
    page.goto(base + TEMPLATES[name], wait_until="networkidle")
    weights = {r.url.removeprefix(base): weight_of(r) for r in got if not r.url.endswith((".svg", ".png"))}
    context.close()
    assert sum(weights.values()) <= most, weights
