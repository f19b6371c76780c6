"""The desk in a real browser: a page changed by mouse and by keys, its problems beside their boxes, its file as it should be."""

from __future__ import annotations

import os
import re
import shutil
import signal
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest
from playwright.sync_api import Locator, Page, expect
from project import ROOT, copy_of_project

from .axe import faults_in_every_light, faults_of_what_changed, note_changes
from .watching import watch

SESSION = "books/cliff-house-lift/session-1.md"
SLOW = """const ask = window.fetch.bind(window);
window.fetch = async (address, ...more) => {
  if (String(address) === "/edit") await new Promise((done) => setTimeout(done, 600));
  return ask(address, ...more);
};"""
"""A desk that takes its time to save."""


@contextmanager
def desk_of(root: Path) -> Iterator[str]:
    """The desk of a project as its author starts it; it is stopped as she stops it."""
    environment = {**os.environ, "PYTHONPATH": str(ROOT / "hooks"), "PYTHONUNBUFFERED": "1"}
    command = [sys.executable, "-m", "storymaths", "desk", "--stay"]
    with subprocess.Popen(command, cwd=root, env=environment, stdout=subprocess.PIPE, text=True) as program:
        assert program.stdout is not None
        address = next(found[0] for line in program.stdout if (found := re.search(r"http://127\.0\.0\.1:\S+", line)))
        try:
            yield address
        finally:
            program.send_signal(signal.SIGINT)
            assert program.wait(20) in (0, 130), "Ctrl and C stops it"


@pytest.fixture(scope="module")
def root(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return copy_of_project(tmp_path_factory.mktemp("desk") / "project")


@pytest.fixture(scope="module")
def address(root: Path) -> Iterator[str]:
    with desk_of(root) as found:
        yield found


def open_session(page: Page, address: str) -> None:
    page.goto(address)
    page.goto(f"{address.split('?', maxsplit=1)[0]}page?source={SESSION}")
    expect(page.locator("#all-wrong-title")).to_have_text("No problems on this page", timeout=60_000)


def box(page: Page, loc: str) -> Locator:
    return page.locator(f'[id="in-front.{loc}"]')


def problems(page: Page, loc: str) -> Locator:
    return page.locator(f'[id="problems-front.{loc}"] li')


def test_a_page_is_changed_by_mouse_and_by_keys_and_its_file_says_that_and_nothing_else(
    page: Page, address: str, root: Path
) -> None:
    file = root / "content" / SESSION
    before = file.read_text("utf-8")
    watched = watch(page)
    open_session(page, address)
    minutes = box(page, "minutes").input_value()

    box(page, "minutes").click()
    box(page, "minutes").fill("7")
    page.locator("#page-title").click()
    expect(problems(page, "minutes")).to_have_count(1, timeout=60_000)
    expect(box(page, "minutes")).to_have_attribute("aria-invalid", "true")
    assert file.read_text("utf-8") == before.replace(f"minutes: {minutes}", "minutes: 7", 1)
    box(page, "minutes").fill(minutes)
    page.locator("#page-title").click()
    expect(problems(page, "minutes")).to_have_count(0, timeout=60_000)
    assert file.read_text("utf-8") == before

    page.locator("#page-title").click()
    for _ in range(60):
        page.keyboard.press("Tab")
        if page.evaluate("document.activeElement.id") == "in-front.summary":
            break
    page.keyboard.press("Control+A")
    page.keyboard.type("Children weigh the friends in cubes.")
    page.keyboard.press("Tab")
    expect(page.locator("#told")).to_contain_text("Saved at")
    assert "summary: Children weigh the friends in cubes." in file.read_text("utf-8")
    look = page.frame_locator("#look")
    expect(look.get_by_text("Children weigh the friends in cubes.").first).to_be_visible(timeout=60_000)

    page.locator("#undo").click()
    expect(box(page, "summary")).not_to_have_value("Children weigh the friends in cubes.")
    assert file.read_text("utf-8") == before
    assert {url.split("/")[2] for url in watched.asked if not url.startswith("about:")} == {address.split("/")[2]}
    assert [told for told in watched.refused if "inline" not in told] == []


def test_a_list_is_added_to_and_put_in_order_by_keys(page: Page, address: str, root: Path) -> None:
    file = root / "content" / SESSION
    before = file.read_text("utf-8")
    open_session(page, address)
    page.locator('[id="fold-front.steps"] > summary').press("Enter")
    first = page.locator('[id="fold-front.steps.0"] > summary')
    was = page.locator('[id="in-front.steps.0.name"]').input_value()
    first.focus()
    page.keyboard.press("Alt+ArrowDown")
    expect(page.locator('[id="fold-front.steps.1"] > summary')).to_contain_text(was)
    assert file.read_text("utf-8") != before
    page.locator('[id="fold-front.concepts"] > summary').press("Enter")
    page.locator('[id="add-front.concepts"]').fill("counting")
    page.keyboard.press("Enter")
    expect(page.locator('[id="add-front.concepts"]')).to_be_focused()
    page.locator("#undo").click()
    expect(page.locator("#redo")).to_be_enabled()
    page.locator("#undo").click()
    expect(page.locator('[id="in-front.steps.0.name"]')).to_have_value(was)
    assert file.read_text("utf-8") == before


def test_what_is_typed_while_a_change_is_saved_stays_and_so_does_the_place(
    page: Page, address: str, root: Path
) -> None:
    """A form drawn anew takes nothing from who has gone on: neither words nor the place, in a box, on a fold or a button."""
    file = root / "content" / SESSION
    before = file.read_text("utf-8")
    page.add_init_script(SLOW)
    open_session(page, address)
    page.locator('[id="fold-front.concepts"] > summary').press("Enter")
    page.locator('[id="add-front.concepts"]').fill("counting")
    page.keyboard.press("Enter")
    box(page, "summary").focus()
    page.keyboard.press("Control+A")
    page.keyboard.type("Typed meanwhile.")
    expect(page.locator('[id^="in-front.concepts."]').last).to_have_value("counting", timeout=30_000)
    expect(page.locator("#told")).to_contain_text("Saved at")
    assert box(page, "summary").input_value() == "Typed meanwhile."
    assert page.locator("[data-task]").first.locator("option").count() > 20, "every task is still offered"
    page.locator('[id="fold-front.steps"] > summary').focus()
    expect(page.locator("#told")).to_contain_text("Saved at")
    page.wait_for_timeout(1500)
    assert "summary: Typed meanwhile." in file.read_text("utf-8")
    page.locator("#undo").click()
    expect(page.locator("#redo")).to_be_enabled()
    page.locator("#undo").click()
    expect(box(page, "summary")).not_to_have_value("Typed meanwhile.")
    for _ in range(100):  # the second step back is answered slowly too
        if file.read_text("utf-8") == before:
            break
        page.wait_for_timeout(100)
    assert file.read_text("utf-8") == before


def test_who_says_how_many_answers_there_are_by_keys_stays_in_the_activity(
    page: Page, address: str, root: Path
) -> None:
    """The form is drawn anew with one box more, and the button that was pressed is gone."""
    file = root / "content" / SESSION
    before = file.read_text("utf-8")
    file.write_text(re.sub(r"^answers: \d+\n", "", before, count=1, flags=re.MULTILINE), "utf-8")
    open_session(page, address)
    page.locator("[data-do=put]").press("Enter", timeout=60_000)
    expect(page.locator("[data-do=put]")).to_have_count(0)
    expect(page.locator("#told")).to_contain_text("Saved at")
    assert page.evaluate("document.activeElement.closest('.activity-form') !== null")
    file.write_text(before, "utf-8")


def test_every_state_of_the_desk_is_without_fault(page: Page, address: str, root: Path) -> None:
    page.goto(address)
    assert faults_in_every_light(page) == {}
    open_session(page, address)
    page.wait_for_load_state("networkidle")  # what is worked out and offered stands there too
    assert faults_in_every_light(page) == {}
    page.set_viewport_size({"width": 1280, "height": 800})
    note_changes(page)
    for fold in page.locator(".form summary").all():
        if fold.is_visible():
            fold.click()
    for fold in page.locator(".form .item > details:not([open]) > summary").all():
        if fold.is_visible():
            fold.click()
    box(page, "minutes").fill("7")
    page.locator("#page-title").click()
    expect(problems(page, "minutes")).to_have_count(1, timeout=60_000)
    page.locator("#show-states").click()
    expect(page.locator(".state-list li").first).to_be_visible(timeout=60_000)
    page.locator("#show-sheets").click()
    page.locator("#show-offers").click()
    page.locator("#find-ideas").click()
    expect(page.locator("#ideas [data-idea]").first).to_be_visible(timeout=60_000)
    page.locator("[data-do=rename-section]").first.click()
    assert faults_of_what_changed(page) == {}
    page.set_viewport_size({"width": 390, "height": 800})
    assert page.evaluate("document.documentElement.scrollWidth") <= 390, "nothing is wider than a phone"
    file = root / "content" / SESSION
    file.write_text(file.read_text("utf-8").replace("minutes: 7", "minutes:  8"), "utf-8")
    page.set_viewport_size({"width": 1280, "height": 800})
    note_changes(page)
    box(page, "title").fill("Mine")
    page.keyboard.press("Tab")
    expect(page.locator("#conflict")).to_be_visible()
    assert faults_of_what_changed(page) == {}
    page.locator("#conflict-mine").click()
    expect(page.locator("#conflict")).to_be_hidden()
    text = file.read_text("utf-8")
    assert "minutes:  8" in text
    assert "title: Mine" in text


def test_what_hangs_on_a_number_and_a_file_with_no_form_are_without_fault(page: Page, address: str, root: Path) -> None:
    book = "books/cliff-house-lift/index.md"
    file = root / "content" / book
    before = file.read_text("utf-8")
    page.set_viewport_size({"width": 1280, "height": 800})
    page.goto(address)
    page.goto(f"{address.split('?', maxsplit=1)[0]}page?source={book}")
    for fold in ("front.cast", "front.cast.0", "front.cast.0.facts"):
        page.locator(f'[id="fold-{fold}"] > summary').click()
    number = page.locator('[id^="in-front.cast.0.facts"][data-type]').first
    note_changes(page)
    number.fill(str(int(number.input_value()) + 1))
    page.keyboard.press("Tab")
    expect(page.locator(".hanging").first).to_be_visible(timeout=60_000)
    for fold in page.locator(".hanging summary").all():
        fold.click()
    assert faults_of_what_changed(page) == {}
    file.write_text(before.replace("kind: book", "kind: [book", 1), "utf-8")
    page.reload()
    expect(page.locator("#whole-text")).to_be_visible(timeout=60_000)
    assert faults_in_every_light(page) == {}
    file.write_text(before, "utf-8")


def test_an_empty_collection_is_without_fault(page: Page, tmp_path: Path) -> None:
    empty = copy_of_project(tmp_path / "project")
    shutil.rmtree(empty / "content")
    (empty / "content" / "books").mkdir(parents=True)
    with desk_of(empty) as address:
        page.goto(address)
        expect(page.get_by_text("Nothing is here yet.")).to_be_visible()
        assert faults_in_every_light(page) == {}
