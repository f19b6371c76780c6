"""The plan: kept on the device, in an order, added up, printed, and sent as an address."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect
from project import collection, reference
from storymaths.model.session import Session

SESSIONS = ("cliff-house-lift/session-2", "twenty-lamps/session-1", "twenty-lamps/session-3")
SENT = f"plan.html?plan={','.join(SESSIONS)}"


def session(name: str) -> Session:
    return next(page.fields for page in collection().of_kind(Session) if page.path == f"content/books/{name}.md")


def add(page: Page, base: str, *names: str) -> None:
    for name in names:
        page.goto(f"{base}books/{name}.html")
        page.get_by_role("button", name="Add to my plan").click()


def summed(children: int, names: tuple[str, ...] = SESSIONS) -> dict[str, int]:
    """What the sessions need, by thing, worked out by the sessions themselves."""
    sums: dict[str, int] = {}
    for name in names:
        for needed in session(name).materials:
            amount = needed.for_class(children, session(name).group_size)
            sums[needed.item] = sums.get(needed.item, 0) + amount
    return sums


def shown(page: Page) -> dict[str, tuple[str, str]]:
    """The last two columns of the table, by the name of the thing."""
    rows = page.locator(".plan-materials tbody tr").all()
    cells = [(row.locator("th").inner_text(), row.locator("td").all_inner_texts()) for row in rows]
    return {name: (texts[-2], texts[-1]) for name, texts in cells}


@pytest.mark.parametrize("children", [30, 27, 1, 2])
def test_materials_of_all_sessions_are_added_up(page: Page, base: str, children: int) -> None:
    page.goto(base + SENT)
    page.get_by_label("Children in the class").fill(str(children))
    expected = {}
    for item, amount in summed(children).items():
        material = reference().materials[item]
        expected[material.name if amount == 1 else material.plural] = str(amount)
    assert {name: added for name, (added, _) in shown(page).items()} == expected


def test_each_session_leads_to_its_class_screen_and_to_its_lesson_in_one_file(page: Page, base: str) -> None:
    page.goto(base + SENT)
    items = page.locator(".plan-idea").all()
    assert len(items) == len(SESSIONS)
    for name, item in zip(SESSIONS, items, strict=True):
        screen = item.get_by_role("link", name="Class screen")
        assert page.request.get(screen.evaluate("link => link.href")).ok, name
        printed = page.request.get(
            item.get_by_role("link", name="Print the whole lesson").evaluate("link => link.href")
        )
        assert printed.body().startswith(b"%PDF-"), name


def test_enough_counts_what_comes_back_once_and_what_is_used_up_each_time(page: Page, base: str) -> None:
    page.goto(base + SENT)
    expect(page.locator(".plan-materials")).to_be_visible()
    each = [summed(30, (name,)) for name in SESSIONS]
    for item, added in summed(30).items():
        material = reference().materials[item]
        most = max(sums.get(item, 0) for sums in each)
        enough = most if material.reusable else added
        assert shown(page)[material.name if added == 1 else material.plural] == (str(added), str(enough))


def test_a_session_is_put_in_and_taken_out(page: Page, base: str) -> None:
    add(page, base, SESSIONS[0])
    expect(page.locator(".plan-said")).to_have_text("Added. My plan has 1 idea")
    expect(page.locator(".plan-count")).to_have_text("1")
    page.reload()
    page.get_by_role("button", name="Take out of my plan").click()
    expect(page.locator(".plan-count")).to_be_hidden()


def test_a_card_of_the_finder_puts_its_session_in(page: Page, base: str) -> None:
    page.goto(f"{base}find.html?q=camel")
    page.get_by_role("button", name="Add to my plan: Who is worth Camel?").click()
    page.goto(f"{base}plan.html")
    expect(page.locator(".plan-ideas h3")).to_have_text(["Who is worth Camel?"])


def test_the_order_is_the_teachers_and_lasts(page: Page, base: str) -> None:
    add(page, base, *SESSIONS)
    page.goto(f"{base}plan.html")
    names = [session(name).title for name in SESSIONS]
    ideas = page.locator(".plan-ideas h3")
    expect(ideas).to_have_text(names)
    later = page.locator(".plan-idea").first.get_by_role("button", name="Later")
    later.focus()
    page.keyboard.press("Enter")
    expect(ideas).to_have_text([names[1], names[0], names[2]])
    expect(page.locator(".plan-idea").nth(1).get_by_role("button", name="Later")).to_be_focused()
    page.reload()
    expect(ideas).to_have_text([names[1], names[0], names[2]])


def test_what_is_taken_out_can_be_put_back(page: Page, base: str) -> None:
    add(page, base, *SESSIONS[:2])
    page.goto(f"{base}plan.html")
    page.locator(".plan-idea").first.get_by_role("button", name="Take out").click()
    expect(page.locator(".plan-idea")).to_have_count(1)
    page.get_by_role("button", name="Put it back").click()
    expect(page.locator(".plan-idea")).to_have_count(2)
    page.get_by_role("button", name="Empty my plan").click()
    expect(page.locator(".plan-about")).to_be_visible()


def test_the_address_of_a_plan_opens_it_elsewhere(page: Page, browser: Browser, base: str) -> None:
    add(page, base, *SESSIONS)
    page.goto(f"{base}plan.html")
    address = page.get_by_label("The address of this plan").input_value()
    context = browser.new_context()
    other = context.new_page()
    other.goto(address)
    expect(other.locator(".plan-ideas h3")).to_have_text([session(name).title for name in SESSIONS])
    expect(other.locator(".plan-count")).to_be_hidden()
    other.get_by_role("button", name="Make it my plan").click()
    expect(other.locator(".plan-count")).to_have_text("3")
    expect(other).to_have_url(f"{base}plan.html")
    context.close()


def test_an_idea_that_is_gone_is_told_of(page: Page, base: str) -> None:
    page.goto(f"{base}plan.html?plan={SESSIONS[0]},nowhere/session-9")
    expect(page.get_by_text("One idea of this plan is no longer here.")).to_be_visible()
    expect(page.locator(".plan-idea")).to_have_count(1)


def test_an_address_made_up_by_somebody_cannot_put_anything_on_the_page(page: Page, base: str) -> None:
    page.goto(f"{base}plan.html?plan=%3Cimg%20src%3Dx%20onerror%3Dalert(1)%3E/a,__proto__,constructor")
    expect(page.get_by_text("3 ideas of this plan are no longer here.")).to_be_visible()
    assert page.locator("main img").count() == 0


def test_what_each_home_needs_stands_apart(page: Page, base: str) -> None:
    page.goto(f"{base}plan.html?plan={SESSIONS[0]},twenty-lamps/home-1")
    expect(page.locator(".plan-home li")).to_contain_text("5 plastic cups")
    assert "plastic cups" not in shown(page)


def test_data_is_fetched_only_when_there_is_a_plan(page: Page, base: str) -> None:
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url) if "plan-data" in request.url else None)
    page.goto(f"{base}plan.html", wait_until="networkidle")
    expect(page.locator(".plan-about")).to_be_visible()
    assert asked == []


@pytest.mark.reads(java_script_enabled=False)
def test_without_script_the_page_says_what_it_is_for(page: Page, base: str) -> None:
    page.goto(f"{base}plan.html")
    expect(page.get_by_role("link", name="Find an idea")).to_be_visible()
    expect(page.locator(".plan-about")).to_contain_text("stays on this device")


def test_it_works_from_a_memory_stick(page: Page, site: Path) -> None:
    page.goto((site / "books" / f"{SESSIONS[0]}.html").as_uri())
    page.get_by_role("button", name="Add to my plan").click()
    page.goto((site / "plan.html").as_uri())
    expect(page.locator(".plan-ideas h3")).to_have_text([session(SESSIONS[0]).title])


def test_on_paper_there_are_no_buttons(page: Page, base: str) -> None:
    page.goto(base + SENT)
    expect(page.locator(".plan-materials")).to_be_visible()
    page.emulate_media(media="print")
    expect(page.locator(".plan-materials")).to_be_visible()
    assert [b.inner_text() for b in page.get_by_role("button").all() if b.is_visible()] == []


def test_a_small_phone_shows_it_without_moving_sideways(page: Page, base: str) -> None:
    page.set_viewport_size({"width": 320, "height": 640})
    page.goto(base + SENT)
    expect(page.locator(".plan-materials")).to_be_visible()
    assert page.evaluate("document.documentElement.scrollWidth") <= 320
    expect(page).to_have_title(re.compile("^My plan"))
