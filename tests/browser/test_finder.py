"""The finder in a real browser: what it counts, finds, says and keeps in its address, and what it never fetches."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

import pytest
from bench.counting_server import serving
from bench.many_sessions import make_project
from playwright.sync_api import Locator, Page, Route, expect
from project import collection
from run_folder import made_once
from storymaths.model.session import Session
from storymaths.pipeline import start_build
from storymaths.publish.ideas import ideas

INDEX = re.compile(r"/(finder-data|questions|text-rows|plan-data)\.js|/cards/|/pagefind/")
BETWEEN_RESULTS = ".results:not(.looking) > li"


def open_finder(page: Page, base: str, query: str = "") -> Locator:
    page.goto(f"{base}find.html{query}")
    expect(page.locator(".finder-status")).to_contain_text(re.compile("idea|Nothing|No lesson"))
    return page.locator(".results > li")


def open_facet(page: Page, name: str) -> Locator:
    facet = page.locator(f"details.facet-{name}")
    facet.locator("> summary").click()
    expect(facet.locator("label").first).to_be_visible()
    return facet


def number_in(page: Page) -> int:
    """How many ideas the finder says it found, once the text has been searched and it says what it shows."""
    page.wait_for_function(
        """() => {
          const results = document.querySelector(".results"), told = document.querySelector(".finder-status").textContent;
          const number = Number.parseInt(told, 10);
          return results.ariaBusy === "false" && results.children.length === Math.min(30, number);
        }"""
    )
    return int(page.locator(".finder-status").inner_text().split()[0])


def titles(page: Page) -> set[str]:
    number_in(page)
    return {text.split(": ")[-1] for text in page.locator(f"{BETWEEN_RESULTS} h2 a").all_text_contents()}


@pytest.fixture(scope="module")
def many() -> Path:
    """The finder of a hundred made-up sessions, and the files it may ask for."""
    return made_once("many", _build_many)


def _build_many(folder: Path) -> None:
    project = folder.with_name("many-of")
    make_project(project, 100)
    build = start_build(project)
    assert build.reading.problems == ()
    for address, content in {"find.html": build.page("find.md"), **build.files()}.items():
        file = folder / address
        file.parent.mkdir(parents=True, exist_ok=True)
        data = content.read_bytes() if isinstance(content, Path) else content
        file.write_bytes(data.encode() if isinstance(data, str) else data)


@pytest.mark.parametrize("facet", ["year", "concept", "kind", "minutes", "print", "things", "theme"])
def test_a_count_is_what_choosing_the_value_leaves(page: Page, base: str, facet: str) -> None:
    open_finder(page, base)
    labels = open_facet(page, facet).locator("label")
    assert labels.count() > 1
    for n in range(labels.count()):
        told = labels.nth(n).locator(".count").inner_text()
        labels.nth(n).locator("input").check()
        expect(page.locator(".finder-status")).to_have_text(re.compile(rf"^{told} ideas? found"))
        labels.nth(n).locator("input").uncheck()


def test_a_second_value_of_a_facet_says_how_many_would_join(page: Page, base: str) -> None:
    open_finder(page, base, "?kind=home")
    label = page.locator(".facet-kind label", has_text="Books")
    before, joins = number_in(page), label.locator(".count").inner_text()
    assert joins.startswith("+")
    label.locator("input").check()
    expect(page.locator(".finder-status")).to_have_text(f"{before + int(joins)} ideas found.")


def test_any_within_a_facet_and_all_of_several(page: Page, base: str) -> None:
    open_finder(page, base, "?concept=equality&concept=arrays&kind=session")
    wider = {"equality", "arrays"}
    tree = collection().reference.concepts
    wider |= {idea.id for idea in tree.values() if idea.under in wider}
    expected = {
        idea.fields.title
        for idea in ideas(collection())
        if isinstance(idea.fields, Session) and wider & set(idea.fields.concepts)
    }
    assert expected
    assert titles(page) == expected


def test_choosing_a_strand_takes_in_every_concept_of_it(page: Page, base: str) -> None:
    open_finder(page, base, "?concept=strand-calculation&kind=session")
    tree = collection().reference.concepts
    expected = {
        idea.fields.title
        for idea in ideas(collection())
        if isinstance(idea.fields, Session) and any(tree[name].strand == "calculation" for name in idea.fields.concepts)
    }
    assert titles(page) == expected


def test_a_year_and_the_years_it_bends_to_are_told_apart(page: Page, base: str) -> None:
    open_finder(page, base, "?year=b3&kind=session")
    expected = {page.fields.title for page in collection().of_kind(Session) if 3 in page.fields.bends}
    assert titles(page) == expected
    expect(page.locator(".results .why").first).to_contain_text("can be taught to Year 3")


def test_the_best_come_first_and_say_why(page: Page, base: str) -> None:
    open_finder(page, base, "?concept=sharing&year=2&kind=session")
    first = page.locator(".results .why").first
    expect(first).to_contain_text("teaches sharing")
    expect(first).to_contain_text("Year 2")
    firsts = [
        i.fields.title
        for i in ideas(collection())
        if isinstance(i.fields, Session) and i.fields.concepts[0] == "sharing"
    ]
    assert page.locator(".results h2 a").first.text_content().endswith(firsts[0])  # type: ignore[union-attr]


def test_chips_take_away_and_keep_the_focus_near(page: Page, base: str) -> None:
    open_finder(page, base, "?concept=equality&year=2&kind=session")
    chips = page.locator(".chips .chip")
    expect(chips).to_have_count(3)
    chips.nth(1).click()
    expect(chips).to_have_count(2)
    expect(page).not_to_have_url(re.compile("year=2"))
    expect(chips.nth(1)).to_be_focused()
    page.get_by_role("button", name="Start again").click()
    expect(chips).to_have_count(0)
    expect(page.locator("#find-q")).to_be_focused()


def test_back_and_forward_go_through_the_questions_asked(page: Page, base: str) -> None:
    open_finder(page, base)
    everything = number_in(page)
    open_facet(page, "kind").locator("input[value=home]").check()
    homes = number_in(page)
    page.locator("#find-q").press_sequentially("camel", delay=20)
    expect(page.locator(".results mark").first).to_be_visible()
    found = number_in(page)
    assert everything > homes > found > 0
    page.go_back()
    expect(page.locator(".finder-status")).to_have_text(f"{homes} ideas found.")
    expect(page.locator("#find-q")).to_have_value("")
    page.go_back()
    expect(page.locator(".finder-status")).to_have_text(re.compile(f"^{everything} ideas in all"))
    page.go_forward()
    page.go_forward()
    expect(page.locator(".finder-status")).to_have_text(re.compile(f"^{found} ideas? found"))


def test_the_words_are_marked_in_titles_and_in_the_text(page: Page, base: str) -> None:
    open_finder(page, base, "?q=camel")
    expect(page.locator(".results h2 mark").first).to_have_text(re.compile("camel", re.IGNORECASE))
    expect(page.locator(".results .why mark").first).to_have_text(re.compile("camel", re.IGNORECASE))


def test_words_and_facets_hold_together(page: Page, base: str) -> None:
    open_finder(page, base, "?q=skerry&kind=session")
    expect(page.locator(".results .why mark").first).to_be_visible()
    of_the_book = {page.fields.title for page in collection().sessions_of("twenty-lamps")}
    assert titles(page) <= of_the_book


def test_nothing_found_offers_the_nearest(page: Page, base: str) -> None:
    results = open_finder(page, base, "?concept=equality&year=2&minutes=more")
    expect(page.locator(".finder-status")).to_contain_text("Nothing has all of that")
    expect(results.first.locator(".why")).to_contain_text("all but the minutes")
    offer = page.locator(".finder-help button").first
    left = offer.inner_text().rpartition(": ")[2]
    offer.click()
    expect(page.locator(".finder-status")).to_have_text(re.compile(rf"^{left} ideas? found"))


def test_a_guess_at_a_spelling_is_told(page: Page, base: str) -> None:
    open_finder(page, base)
    page.locator("#find-q").fill("qeuality")
    expect(page.locator(".finder-status")).to_have_text(re.compile("^Shown for “equality”: [1-9][0-9]* ideas found"))
    expect(page.locator("#find-q")).to_have_value("qeuality")
    expect(page.locator(".pages-too a").first).to_have_attribute("href", re.compile("concepts/equality.html"))


def test_no_word_is_let_go_of_before_the_text_was_asked(page: Page, base: str) -> None:
    waiting: list[Route] = []

    def keep(route: Route) -> None:
        waiting.append(route)

    open_finder(page, base)
    page.route("**/pagefind/pagefind.js", keep)
    before = page.locator(".results h2").all_text_contents()
    page.locator("#find-q").fill("sharing camel")
    expect(page.locator(".finder-status")).to_have_text("Looking in the text …")
    assert page.locator(".results h2").all_text_contents() == before
    page.wait_for_timeout(100)
    waiting[0].continue_()
    expect(page.locator(".results")).to_have_attribute("aria-busy", "false")
    expect(page.locator(".finder-status")).to_contain_text("found")


def test_a_year_that_is_typed_is_a_filter_to_take_away(page: Page, base: str) -> None:
    open_finder(page, base, "?q=y2+number+bonds&kind=session")
    chips = page.locator(".chips .chip")
    expect(chips).to_have_count(2)
    expect(chips.first).to_contain_text("“y2”: Year 2 or can be taught to Year 2")
    expect(page.locator(".facet-year .facet-chosen")).to_have_text("2 chosen")
    chips.first.click()
    expect(page.locator("#find-q")).to_have_value("number bonds")
    expect(chips).to_have_count(1)
    expect(chips.first).to_be_focused()


def test_where_nothing_is_of_an_idea_it_says_so_with_its_page_and_the_nearest(page: Page, base: str) -> None:
    results = open_finder(page, base, "?q=fractions")
    expect(page.locator(".finder-status")).to_have_text(
        re.compile("^No lesson on fractions yet. The . nearest are shown.$")
    )
    expect(page.locator(".pages-too a").first).to_have_attribute(
        "href", re.compile("concepts/fractions-of-shapes.html")
    )
    expect(results.first.locator(".why")).to_contain_text("teaches sharing")


@pytest.mark.parametrize("asked", ["dinosaurs", "printable", "phonics", "g", "camel dinosaurs"])
def test_never_less_than_a_whole_word_is_found(page: Page, base: str, asked: str) -> None:
    open_finder(page, base, f"?q={asked}")
    absent = asked.rsplit(maxsplit=1)[-1]
    expect(page.locator(".finder-status")).to_have_text(
        f"Nothing here has the word “{absent}” yet. Try other words, or fewer."
    )
    expect(page.locator(".results > li")).to_have_count(0)
    offer = page.locator(".finder-help button").first
    expect(offer).to_have_text("Start again" if absent == asked else f"Without “{absent}”")


def test_a_word_half_typed_finds_what_begins_with_it_in_the_text(page: Page, base: str) -> None:
    open_finder(page, base, "?q=skerr")
    expect(page.locator(".results .why mark").first).to_have_text("Skerry")


@pytest.mark.parametrize("asked", ["take away", "telling the time", "year 1 number bonds", "reception comparing"])
def test_from_a_memory_stick_the_same_answers_come(page: Page, base: str, site: Path, asked: str) -> None:
    open_finder(page, base, f"?q={asked}")
    found, where = number_in(page), "#".join(page.locator(".results h2").all_text_contents())
    page.goto(f"{(site / 'find.html').as_uri()}?q={asked}")
    assert number_in(page) == found > 0
    assert "#".join(page.locator(".results h2").all_text_contents()) == where


def test_a_year_without_a_lesson_offers_those_that_can_be_taught_to_it(page: Page, base: str) -> None:
    open_finder(page, base, "?year=0")
    expect(page.locator(".finder-help button").first).to_have_text(
        re.compile("^What can also be taught to Reception: [1-9]")
    )


def test_what_was_found_is_announced(page: Page, base: str) -> None:
    open_finder(page, base)
    status = page.get_by_role("status")
    expect(status).to_have_attribute("aria-live", "polite")
    expect(status).to_have_text(re.compile(r"^\d+ ideas in all(?:, the first 30 shown)?\.$"))
    open_facet(page, "kind").locator("input[value=book]").check()
    expect(status).to_have_text(f"{len(collection().books)} ideas found.")


def test_the_keyboard_is_enough(page: Page, base: str) -> None:
    open_finder(page, base)
    page.locator("#find-q").focus()
    page.keyboard.press("Tab")
    expect(page.locator(".facet-year > summary")).to_be_focused()
    page.keyboard.press("Enter")
    expect(page.locator(".facet-year input").first).to_be_visible()
    page.keyboard.press("Tab")
    expect(page.locator(".facet-year input").first).to_be_focused()
    page.keyboard.press("Space")
    expect(page.locator(".chips .chip")).to_have_count(1)
    page.locator(".chips .chip").focus()
    page.keyboard.press("Enter")
    expect(page.locator(".chips .chip")).to_have_count(0)


def test_an_index_is_fetched_only_when_it_is_needed(page: Page, base: str) -> None:
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url) if INDEX.search(request.url) else None)
    for elsewhere in ("index.html", "books/cliff-house-lift/session-1.html", "concepts/index.html", "plan.html"):
        page.goto(base + elsewhere, wait_until="networkidle")
    assert asked == []
    open_finder(page, base)
    page.wait_for_load_state("networkidle")
    assert all("pagefind" not in url and "questions" not in url for url in asked), asked
    page.locator("#find-q").fill("camel")
    expect(page.locator(".results .why mark").first).to_be_visible()
    assert any("pagefind" in url for url in asked)
    assert not any("questions" in url for url in asked)


def test_many_results_come_thirty_at_a_time(page: Page, many: Path) -> None:
    with serving(many) as served:
        results = open_finder(page, served.address)
        expect(results).to_have_count(30)
        expect(page.locator(".finder-status")).to_contain_text("the first 30 shown")
        page.wait_for_load_state("networkidle")  # letters that come late move the button from under the pointer
        page.get_by_role("button", name="Show more").click()
        expect(results).to_have_count(60)
        expect(results.nth(30).locator("a")).to_be_focused()
        page.reload()
        expect(results).to_have_count(60)


def test_only_the_summaries_in_sight_are_fetched(page: Page, many: Path) -> None:
    with serving(many) as served:
        open_finder(page, served.address)
        expect(page.locator(".summary").first).not_to_be_empty()
        page.wait_for_load_state("networkidle")
        assert {name for name in served.sent if name.startswith("cards/")} == {"cards/0.json"}


def test_a_long_list_of_books_can_be_narrowed_by_name(page: Page, many: Path) -> None:
    with serving(many) as served:
        open_finder(page, served.address)
        facet = open_facet(page, "book")
        expect(facet.locator("label:has(input[type=checkbox])")).to_have_count(24)
        facet.get_by_role("searchbox").fill("barley bridge")
        expect(facet.locator("label:has(input[type=checkbox])")).to_have_count(1)
        facet.locator("input[type=checkbox]").check()
        assert number_in(page) == 6


def test_from_a_memory_stick_titles_words_and_questions_search(page: Page, site: Path) -> None:
    page.goto((site / "find.html").as_uri())
    expect(page.locator(".finder-status")).to_contain_text("in all")
    expect(page.locator(".summary").first).not_to_be_empty()
    page.locator("#find-q").fill("what does the lift tell us")
    expect(page.locator(".results .why mark").first).to_be_visible()
    open_facet(page, "kind").locator("input[value=session]").check()
    assert number_in(page) >= 1


def test_without_the_text_index_the_questions_answer(page: Page, base: str) -> None:
    page.route("**/pagefind/**", lambda route: route.abort())
    open_finder(page, base, "?q=skerry")
    expect(page.locator(".results .why mark").first).to_be_visible()


def test_without_its_data_the_lists_stay(page: Page, base: str) -> None:
    page.route("**/finder-data.json", lambda route: route.abort())
    page.goto(f"{base}find.html")
    expect(page.locator(".finder-status")).to_contain_text("the lists below")
    expect(page.locator(".finder-index")).to_be_visible()


@pytest.mark.reads(java_script_enabled=False)
def test_without_script_the_lists_answer(page: Page, base: str) -> None:
    page.goto(f"{base}find.html")
    expect(page.locator(".finder-index")).to_be_visible()
    expect(page.locator("form.finder-form")).to_be_hidden()
    expect(page.locator(".finder-index a").first).to_be_visible()


def _with_policy(policy: str) -> Callable[[Route], None]:
    def answer(route: Route) -> None:
        response = route.fetch()
        route.fulfill(response=response, headers={**response.headers, "content-security-policy": policy})

    return answer


def test_a_strict_policy_for_content_is_kept(page: Page, base: str) -> None:
    refused: list[str] = []
    page.on(
        "console", lambda message: refused.append(message.text) if "Content Security Policy" in message.text else None
    )
    page.route("**/*", _with_policy("default-src 'self'; script-src 'self' 'wasm-unsafe-eval'"))
    open_finder(page, base, "?q=skerry")
    expect(page.locator(".results .why mark").first).to_be_visible()
    assert refused == []
    page.unroute_all(behavior="wait")


@pytest.mark.parametrize("query", ["", "?q=camel&concept=equality&year=2", "?year=6"])
def test_nothing_is_wider_than_a_small_phone(page: Page, base: str, query: str) -> None:
    page.set_viewport_size({"width": 320, "height": 640})
    open_finder(page, base, query)
    page.locator(".narrow > summary").click()
    for name in ("year", "concept", "theme"):
        facet = page.locator(f"details.facet-{name}")
        if facet.count() and not facet.get_attribute("open"):
            facet.locator("> summary").click()
    assert page.evaluate("document.documentElement.scrollWidth") <= 320


def test_on_a_phone_one_button_leads_from_the_facets_to_what_was_found(page: Page, base: str) -> None:
    page.set_viewport_size({"width": 390, "height": 844})
    open_finder(page, base)
    page.locator(".narrow > summary").click()
    open_facet(page, "kind").locator("input[value=home]").check()
    number = number_in(page)
    page.get_by_role("button", name=f"Show {number} ideas").click()
    expect(page.locator(".finder-status")).to_be_focused()
    expect(page.locator(".results a").first).to_be_in_viewport()


def test_boxes_and_buttons_are_big_enough_to_hit(page: Page, base: str) -> None:
    open_finder(page, base, "?concept=equality")
    open_facet(page, "year")
    sizes = page.evaluate(
        """[...document.querySelectorAll('.finder button, .finder summary, .facet label')]
        .filter((e) => e.offsetParent).map((e) => [e.textContent, e.offsetWidth, e.offsetHeight])"""
    )
    assert sizes
    assert [size for size in sizes if min(size[1:]) < 24] == []


def test_requests_stay_on_the_site(page: Page, base: str) -> None:
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    open_finder(page, base, "?q=camel")
    expect(page.locator(".results mark").first).to_be_visible()
    assert all(address.startswith((base, "blob:", "data:")) for address in asked)


def test_no_script_of_any_page_throws(page: Page, base: str) -> None:
    thrown: list[str] = []
    page.on("pageerror", lambda error: thrown.append(str(error)))
    open_finder(page, base, "?q=camel&concept=equality&year=6")
    for name in (
        "cliff-house-lift/session-1",
        "cliff-house-lift/home-1",
        "cliff-house-lift/story",
        "cliff-house-lift/index",
    ):
        page.goto(f"{base}books/{name}.html", wait_until="load")
    page.goto(f"{base}plan.html?plan=cliff-house-lift/session-1", wait_until="networkidle")
    assert thrown == []
