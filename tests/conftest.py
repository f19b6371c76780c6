"""The folder of the run, named before workers are started, so that they share it; and a browser to read pages with."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import AbstractContextManager, contextmanager
from typing import Any

import pytest
from hypothesis import settings
from playwright.sync_api import Browser, BrowserContext, Page, sync_playwright
from run_folder import run_folder

from .browser import axe_kept
from .browser.get_browser import FLAGS, find_browser

run_folder()
# The suite is to be waited for; `pytest --hypothesis-profile=thorough` tries six times as many made-up cases.
settings.register_profile("suite", max_examples=100, deadline=None)
settings.register_profile("thorough", max_examples=600, deadline=None)
settings.load_profile("suite")
NewPage = Callable[..., AbstractContextManager[Page]]


def pytest_addoption(parser: pytest.Parser) -> None:
    """How the tests may be run, beside what pytest offers."""
    parser.addoption("--axe", choices=("kept", "keep", "afresh"), default="kept", help="see browser/axe_kept.py")


def pytest_configure(config: pytest.Config) -> None:
    """In every process of a run."""
    if config.getoption("axe") == "afresh":
        axe_kept.forget()


def pytest_sessionfinish(session: pytest.Session) -> None:
    """The first process, which starts the others, ends last."""
    if session.config.getoption("axe") != "kept" and not hasattr(session.config, "workerinput"):
        axe_kept.keep()


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """A Chromium-family browser: one that is on this machine, else Playwright's own."""
    with sync_playwright() as playwright:
        launched = playwright.chromium.launch(executable_path=find_browser(), args=FLAGS)
        yield launched
        launched.close()


@pytest.fixture(scope="session")
def new_page(browser: Browser) -> NewPage:
    """Opens a page with nothing kept from the one before, in a browser that reads as asked: by touch, without scripts …

    A context of its own for each would cost four times as much: there is one for each way to read.
    """
    contexts: dict[str, BrowserContext] = {}

    @contextmanager
    def open_page(**reading: Any) -> Iterator[Page]:
        context = contexts.get(repr(reading)) or browser.new_context(**reading)
        contexts[repr(reading)] = context
        page = context.new_page()
        try:
            yield page
        finally:
            _forget(context, page)

    return open_page


@pytest.fixture
def page(new_page: NewPage, request: pytest.FixtureRequest) -> Iterator[Page]:
    """A page for one test, read as its mark ``reads`` says: the words of Playwright's ``new_context``."""
    mark = request.node.get_closest_marker("reads")
    with new_page(**(mark.kwargs if mark else {})) as opened:
        yield opened


def _forget(context: BrowserContext, page: Page) -> None:
    """Closes a page, and takes away all that it or another of its context has kept on the device."""
    browser = context.new_cdp_session(page)
    browser.send("Storage.clearDataForOrigin", {"origin": "*", "storageTypes": "all"})
    page.close()
    context.clear_cookies()
