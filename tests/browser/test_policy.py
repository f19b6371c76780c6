"""Each page keeps its Content Security Policy, from a server and from a memory stick, and bites."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Page
from storymaths.render.policy import policy

from .pages_of_every_kind import TEMPLATES
from .watching import watch


@pytest.mark.parametrize("name", ["front", "find", "plan", "story", "session", "home activity", "not found"])
def test_no_page_asks_for_what_its_policy_refuses_from_a_memory_stick(page: Page, site: Path, name: str) -> None:
    watched = watch(page)
    page.goto((site / TEMPLATES[name]).as_uri())
    page.wait_for_load_state("networkidle")
    assert watched.refused == []
    face = page.evaluate("getComputedStyle(document.body).fontFamily")
    assert name == "not found" or "Storymaths" in face, "the stylesheet was not let in"


def test_the_finder_searches_the_text_under_its_policy(page: Page, base: str) -> None:
    watched = watch(page)
    page.goto(base + "find.html?q=basket")
    page.locator(".results mark").first.wait_for()
    assert watched.refused == []
    assert any("wasm." in url for url in watched.asked), "the text index did not run"


@pytest.mark.parametrize(
    "attack",
    [
        "const s = document.createElement('script'); s.textContent = 'window.ran = 1'; document.body.append(s);",
        "document.body.insertAdjacentHTML('beforeend', '<img src=\"look/none.svg\" onerror=\"window.ran = 1\">');",
        "document.body.insertAdjacentHTML('beforeend', '<p style=\"color: red\" id=\"red\">red</p>');",
        "document.body.insertAdjacentHTML('beforeend', '<iframe srcdoc=\"<script>parent.ran = 1</script>\"></iframe>');",
        "document.body.insertAdjacentHTML('beforeend', '<img src=\"http://127.0.0.1:9/spy.png\">');",
        "document.body.insertAdjacentHTML('beforeend', '<object data=\"look/mark.svg\"></object>');",
    ],
)
def test_the_policy_bites(page: Page, base: str, attack: str) -> None:
    watched = watch(page)
    page.goto(base + "access.html")
    page.evaluate(f"() => {{ {attack} }}")
    page.wait_for_timeout(200)
    assert watched.refused
    assert page.evaluate("window.ran") is None


def test_only_the_finder_may_run_web_assembly_and_no_page_scripts_within_it() -> None:
    assert "wasm" in policy("find")
    assert "wasm" not in policy("session")
    assert not any("unsafe-inline" in policy(kind) for kind in ("session", "find"))
