"""The pages of the tests share a browser's memory of files, and nothing that a page could know of the one before."""

from __future__ import annotations

from pathlib import Path

import pytest

from ..conftest import NewPage


@pytest.mark.parametrize("where", ["server", "memory stick"])
def test_nothing_is_kept_from_the_page_before(new_page: NewPage, base: str, site: Path, where: str) -> None:
    address = f"{base}index.html" if where == "server" else (site / "index.html").as_uri()
    for _ in range(2):
        with new_page() as page:
            page.goto(address)
            kept = page.evaluate("[localStorage.length, sessionStorage.length, document.cookie]")
            assert kept == [0, 0, ""]
            page.evaluate("localStorage.here = sessionStorage.here = document.cookie = 'here=1'")
            assert page.evaluate("localStorage.length") == 1
