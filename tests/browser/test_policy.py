"""Each page keeps its Content Security Policy, from a server and from a memory stick, and stores next to nothing."""

from __future__ import annotations

import re
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, ConsoleMessage
from storymaths.render.policy import policy

from .pages_of_every_kind import STATES, TEMPLATES

KEPT_ON_THE_DEVICE = re.compile(r"(?:plan of|class screen .+ of) ")
"""The list of chosen sessions, and where a class screen stands."""
_LISTEN = (
    "document.addEventListener('securitypolicyviolation', (e) => broken(`${e.violatedDirective} ${e.blockedURI}`));"
)
_STORED = """async () => ({
  storage: [...Object.keys(localStorage)], session: [...Object.keys(sessionStorage)],
  cookies: document.cookie, workers: (await navigator.serviceWorker.getRegistrations()).length,
  caches: await caches.keys(), databases: (await indexedDB.databases()).map((one) => one.name),
})"""


@contextmanager
def watched(browser: Browser) -> Iterator[tuple[BrowserContext, list[str]]]:
    """A context, and everything its pages were refused."""
    context, refused = browser.new_context(), list[str]()

    def heard(what: str) -> None:
        refused.append(what)

    def note(message: ConsoleMessage) -> None:
        if "Content Security Policy" in message.text:
            refused.append(message.text)

    context.expose_function("broken", heard)
    context.add_init_script(_LISTEN)
    context.on("console", note)
    yield context, refused
    context.close()


@pytest.mark.parametrize("name", TEMPLATES)
def test_no_page_asks_for_what_its_policy_refuses(browser: Browser, base: str, name: str) -> None:
    with watched(browser) as (context, refused):
        page = context.new_page()
        page.goto(base + TEMPLATES[name])
        page.wait_for_function("document.readyState === 'complete'")
        assert refused == []
        assert context.cookies() == []


@pytest.mark.parametrize("name", STATES)
def test_nor_in_any_state_and_nothing_is_kept_but_the_plan_and_the_screen(
    browser: Browser, base: str, name: str
) -> None:
    address, act = STATES[name]
    with watched(browser) as (context, refused):
        page = context.new_page()
        page.goto(base + address)
        act(page)
        page.wait_for_load_state("networkidle")
        assert refused == []
        kept = page.evaluate(_STORED)
        assert [key for key in kept.pop("storage") if not KEPT_ON_THE_DEVICE.match(key)] == []
        assert kept == {"session": [], "cookies": "", "workers": 0, "caches": [], "databases": []}
        assert context.cookies() == []


@pytest.mark.parametrize("name", ["front", "find", "plan", "story", "session", "home activity", "not found"])
def test_nor_from_a_memory_stick(browser: Browser, site: Path, name: str) -> None:
    with watched(browser) as (context, refused):
        page = context.new_page()
        page.goto((site / TEMPLATES[name]).as_uri())
        page.wait_for_load_state("networkidle")
        assert refused == []
        face = page.evaluate("getComputedStyle(document.body).fontFamily")
        assert name == "not found" or "Storymaths" in face, "the stylesheet was not let in"


def test_the_finder_searches_the_text_under_its_policy(browser: Browser, base: str) -> None:
    with watched(browser) as (context, refused):
        page = context.new_page()
        asked: list[str] = []
        page.on("request", lambda request: asked.append(request.url))
        page.goto(base + "find.html?q=basket")
        page.locator(".results mark").first.wait_for()
        assert refused == []
        assert any("wasm." in url for url in asked), "the text index did not run"


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
def test_the_policy_bites(browser: Browser, base: str, attack: str) -> None:
    with watched(browser) as (context, refused):
        page = context.new_page()
        page.goto(base + "access.html")
        page.evaluate(f"() => {{ {attack} }}")
        page.wait_for_timeout(200)
        assert refused
        assert page.evaluate("window.ran") is None


def test_only_the_finder_may_run_web_assembly_and_only_serve_lets_scripts_in() -> None:
    assert "wasm" in policy("find")
    assert "wasm" not in policy("session")
    assert "unsafe-inline" not in policy("session")
    assert "unsafe-inline" in policy("session", serving=True)
