"""Three people at work in a real browser: a teacher, a parent, and a consultant with a session that is not right yet."""

from __future__ import annotations

import re
import subprocess
import sys
import time
import urllib.error
import urllib.request
from collections.abc import Iterator
from pathlib import Path
from socket import socket

import pytest
from built import copy_that_was_built
from playwright.sync_api import Page, expect

SESSION = "content/books/cliff-house-lift/session-2.md"


def test_a_teacher_finds_a_session_by_concept_and_year(page: Page, base: str) -> None:
    page.goto(base)
    page.get_by_role("link", name=re.compile("^I teach")).click()
    expect(page.get_by_role("status").first).to_contain_text("in all")
    page.locator("summary", has_text=re.compile("^Year")).click()
    page.get_by_role("checkbox", name=re.compile(r"^Year 2\b")).check()
    page.locator("summary", has_text=re.compile("^Concept")).click()
    page.get_by_role("checkbox", name=re.compile(r"^Equality\b")).check()
    expect(page).to_have_url(re.compile(r"concept=equality"))
    expect(page).to_have_url(re.compile(r"year=2"))
    page.get_by_role("link", name="Who is worth Camel?").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Who is worth Camel?")
    headings = [heading.strip() for heading in page.get_by_role("heading").all_inner_texts()]
    order = [
        *("At a glance", "To print", "Get ready", "Take care", "Words", "The session, step by step"),
        *(
            "Start 6 minutes",
            "Read pages 7 and 8 8 minutes",
            "Where to stop, and what to ask",
            "Watch the mat 11 minutes",
        ),
        *("One against two 18 minutes", "The main task", "Wrong ideas you might hear", "Finish 7 minutes"),
        *("A question to end on", "Easier, harder, and the years either side", "Look for", "What comes next"),
    ]
    assert [heading for heading in headings if heading in order] == order, (
        "each once, in the order of an evening and a morning"
    )
    expect(page.locator("#watch-the-mat").locator("..").get_by_text("9 = 5 + 4").first).to_be_visible()


def test_the_address_of_a_search_can_be_shared_and_gone_back_from(page: Page, base: str) -> None:
    page.goto(f"{base}find.html?concept=sharing&year=2")
    results = page.locator(".results > li")
    expect(results.first).to_be_visible()
    chosen = results.count()
    page.get_by_role("button", name=re.compile("Sharing")).first.click()
    expect(page).not_to_have_url(re.compile("concept=sharing"))
    assert results.count() > chosen
    page.go_back()
    expect(page).to_have_url(re.compile("concept=sharing"))
    expect(results).to_have_count(chosen)


def test_words_of_the_text_are_found_and_shown(page: Page, base: str) -> None:
    page.goto(f"{base}find.html")
    page.get_by_role("searchbox").fill("camel")
    expect(page.locator(".results mark").first).to_have_text(re.compile("camel", re.IGNORECASE))


def test_a_parent_goes_from_a_book_to_something_to_do(page: Page, base: str) -> None:
    page.set_viewport_size({"width": 390, "height": 844})
    page.goto(base)
    page.get_by_role("link", name=re.compile("^I am at home")).click()
    page.get_by_role("link", name="Level with Camel").click()
    expect(page.get_by_role("heading", name="Say first")).to_be_visible()
    box = page.get_by_role("heading", name="You need").bounding_box()
    assert box is not None
    assert box["y"] < 844, "what is needed is on the first screen of a phone"


@pytest.mark.reads(java_script_enabled=False)
def test_without_scripts_the_lists_answer(page: Page, base: str) -> None:
    page.goto(f"{base}find.html")
    page.get_by_role("link", name="Equality").first.click()
    expect(page.get_by_role("link", name=re.compile("Who is worth Camel"))).to_be_visible()


@pytest.fixture(scope="module")
def served(tmp_path_factory: pytest.TempPathFactory) -> Iterator[tuple[str, Path]]:
    """A copy of the project under ``mkdocs serve``, which is stopped afterwards; a test leaves it as it found it."""
    project = copy_that_was_built(tmp_path_factory.mktemp("served") / "project")
    with socket() as probe:
        probe.bind(("127.0.0.1", 0))
        port = probe.getsockname()[1]
    log = (project / "serve.log").open("w", encoding="utf-8")
    process = subprocess.Popen(
        [sys.executable, "-m", "mkdocs", "serve", "-a", f"127.0.0.1:{port}"],
        cwd=project, stdout=log, stderr=subprocess.STDOUT,
    )  # fmt: skip
    address = f"http://127.0.0.1:{port}/"
    try:
        _wait_for(address)
        yield address, project
    finally:
        process.terminate()  # on Ctrl-C it would first wait for the browsers that listen
        process.wait()
        log.close()


def _wait_for(address: str) -> None:
    for _ in range(240):
        try:
            with urllib.request.urlopen(address, timeout=1):
                return
        except (urllib.error.URLError, OSError):
            time.sleep(0.25)
    raise TimeoutError(f"nothing is served at {address}")


def test_a_consultant_is_told_what_is_wrong_and_mends_it(page: Page, served: tuple[str, Path]) -> None:
    address, project = served
    session, log = project / SESSION, project / "serve.log"
    right = session.read_text(encoding="utf-8")
    here = f"{address}books/cliff-house-lift/session-2.html"
    problems = page.get_by_role("heading", name=re.compile("problems? on this page"))
    page.goto(here)
    expect(problems).to_have_count(0)

    session.write_text(
        right.replace("[2C3: [missing", "[2C33: [missing").replace("minutes: 50", "minutes: 55", 1), encoding="utf-8"
    )
    _until(lambda: "objective-unknown" in log.read_text(encoding="utf-8"))
    _reload_until(page, here, lambda: problems.count() == 1)
    expect(page.get_by_text('"2C33" is not a code in england-content-domain. Did you mean "2C3"?')).to_be_visible()
    expect(page.get_by_text("its steps take 50")).to_be_visible()
    expect(page.get_by_role("heading", level=1)).to_have_text("Who is worth Camel?")

    session.write_text(right.replace("title: Who is worth Camel?", "title: Who is: worth Camel?"), encoding="utf-8")
    _reload_until(page, here, lambda: page.get_by_text("could not be read").count() > 0)

    session.write_text(right, encoding="utf-8")
    _reload_until(page, here, lambda: problems.count() == 0 and page.get_by_text("Who is worth Camel?").count() > 0)


def test_changed_data_and_drafts_show_under_serve(page: Page, served: tuple[str, Path]) -> None:
    address, project = served
    words = project / "site_data/words.yaml"
    text = words.read_text(encoding="utf-8")
    assert "Worth the same." in text
    words.write_text(text.replace("Worth the same.", "Worth exactly the same.", 1), encoding="utf-8")
    _reload_until(page, f"{address}words.html", lambda: page.get_by_text("Worth exactly the same.").count() > 0)
    session = project / SESSION
    finished = session.read_text(encoding="utf-8")
    session.write_text(finished.replace("kind: session\n", "kind: session\nstatus: draft\n"), encoding="utf-8")
    here = f"{address}books/cliff-house-lift/session-2.html"
    _reload_until(page, here, lambda: page.get_by_text("Draft: shown here to its author").count() > 0)
    words.write_text(text, encoding="utf-8")
    session.write_text(finished, encoding="utf-8")


def _until(done) -> None:  # type: ignore[no-untyped-def]
    for _ in range(120):
        if done():
            return
        time.sleep(0.25)
    raise TimeoutError


def _reload_until(page: Page, address: str, done) -> None:  # type: ignore[no-untyped-def]
    for _ in range(60):
        page.goto(address)
        if done():
            return
        time.sleep(0.5)
    raise TimeoutError(address)
