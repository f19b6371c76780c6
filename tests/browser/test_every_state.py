"""Every state a page can be in: usable by everyone, within its policy, and nothing kept but the plan and the screen."""

from __future__ import annotations

import re
from collections.abc import Iterator

import pytest

from ..conftest import NewPage
from .axe import NARROW, faults_in_every_light, faults_of_what_changed, note_changes
from .pages_of_every_kind import STATES
from .watching import Watched, watch

KEPT_ON_THE_DEVICE = re.compile(r"(?:plan of|class screen .+ of) ")
"""The list of chosen sessions, and where a class screen stands."""
_STORED = """async () => ({
  storage: [...Object.keys(localStorage)], session: [...Object.keys(sessionStorage)],
  cookies: document.cookie, workers: (await navigator.serviceWorker.getRegistrations()).length,
  caches: await caches.keys(), databases: (await indexedDB.databases()).map((one) => one.name),
})"""


@pytest.fixture(scope="module", params=STATES)
def acted(request: pytest.FixtureRequest, new_page: NewPage, base: str) -> Iterator[Watched]:
    """A page brought into each state, in a narrow window."""
    address, act = STATES[request.param]
    with new_page(reduced_motion="reduce") as page:
        watched = watch(page)
        page.set_viewport_size({"width": NARROW, "height": 800})
        page.goto(base + address)
        note_changes(page)
        act(page)
        page.wait_for_load_state("networkidle")
        yield watched


def test_axe_finds_nothing_in_any_state(acted: Watched) -> None:
    # A page as its address brings it is held to everything in test_every_page.py; one that was searched for comes so.
    searched = "?" in acted.page.url
    assert (faults_in_every_light if searched else faults_of_what_changed)(acted.page) == {}


def test_nothing_is_refused_and_nothing_kept_but_the_plan_and_the_screen(acted: Watched) -> None:
    assert acted.refused == []
    kept = acted.page.evaluate(_STORED)
    assert [key for key in kept.pop("storage") if not KEPT_ON_THE_DEVICE.match(key)] == []
    assert kept == {"session": [], "cookies": "", "workers": 0, "caches": [], "databases": []}
    assert acted.page.context.cookies() == []
