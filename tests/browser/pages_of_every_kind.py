"""One page of every template, and the states a page can be in, for tests that must see them all."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from playwright.sync_api import Page

TEMPLATES: Mapping[str, str] = {
    "front": "index.html",
    "find": "find.html",
    "plan": "plan.html",
    "books": "books/index.html",
    "book": "books/cliff-house-lift/index.html",
    "story": "books/cliff-house-lift/story.html",
    "session": "books/cliff-house-lift/session-2.html",
    "session with signs": "books/twenty-lamps/session-3.html",
    "home activity": "books/cliff-house-lift/home-1.html",
    "at home": "at-home.html",
    "series list": "series/index.html",
    "series": "series/a-term-on-plover-quay.html",
    "series for two years": "series/two-years-together.html",
    "coverage": "coverage/index.html",
    "coverage of a year": "coverage/year-2.html",
    "coverage of a year without sessions": "coverage/year-5.html",
    "governors": "coverage/for-governors.html",
    "governors of a series": "coverage/series/two-years-together.html",
    "shelf": "shelf.html",
    "concepts": "concepts/index.html",
    "concept": "concepts/equality.html",
    "concept without sessions": "concepts/averages.html",
    "themes": "themes/index.html",
    "theme": "themes/being-left-out.html",
    "years": "years/index.html",
    "year": "years/year-2.html",
    "reception": "years/reception.html",
    "objectives": "objectives/index.html",
    "framework": "objectives/england-content-domain/index.html",
    "framework to come": "objectives/england-2028/index.html",
    "objective": "objectives/england-content-domain/2c1.html",
    "gap": "objectives/england-content-domain/1n1a.html",
    "words": "words.html",
    "materials": "materials.html",
    "safety": "safety.html",
    "checked": "checked.html",
    "kinds of activity": "activities.html",
    "authors' guide": "guide/index.html",
    "fields of a session": "guide/session.html",
    "names to copy": "guide/names.html",
    "commonest problems": "guide/problems.html",
    "catalogue": "catalogue.html",
    "open data": "open-data.html",
    "class screen": "books/cliff-house-lift/session-3-screen.html",
    "class screen to try": "activities-screen.html",
    "plain": "access.html",
    "not found": "404.html",
}


def _open_answers(page: Page) -> None:
    page.locator("details").evaluate_all("folds => folds.forEach((fold) => { fold.open = true; })")


def _wait_for_results(page: Page) -> None:
    page.locator("[data-finder] [role=status]").filter(has_text="idea").or_(
        page.locator("[data-finder] [role=status]").filter(has_text="Nothing")
    ).first.wait_for()
    _open_answers(page)
    # The button that stays at the foot of the window lies on whichever box is there; below the list it lies on none.
    page.evaluate("scrollTo(0, document.body.scrollHeight)")


def _lay_the_weeks(page: Page) -> None:
    page.get_by_label("First day").fill("2027-02-10")
    page.get_by_label("Your school").fill("2027-02-15..2027-02-19 Half term")
    page.get_by_label("Minutes a day").fill("40")
    page.get_by_role("button", name="Lay the sessions").click()
    page.get_by_role("button", name="Print this plan").wait_for()


def _ask_what_cannot_be(page: Page) -> None:
    page.get_by_label("First day").fill("2027-02-10")
    page.get_by_label("Your school").fill("half term")
    page.get_by_label("Minutes a day").fill("5")
    page.get_by_role("button", name="Lay the sessions").click()
    page.get_by_role("alert").locator("li").first.wait_for()


def _put_in_plan(page: Page) -> None:
    page.get_by_role("button", name="Add to my plan").first.click()
    page.goto(page.url.split("/books/")[0] + "/plan.html")
    page.get_by_role("table").first.wait_for()


def _all_pages(page: Page) -> None:
    page.get_by_role("button", name="All pages").click()


def _meaning_shown(page: Page) -> None:
    page.locator("a.word").first.focus()


def _slide(number: int, notes: bool = False) -> Callable[[Page], None]:
    def turn(page: Page) -> None:
        there = page.locator(".where option").nth(number)  # slides for other years have none
        page.locator(".where").select_option(there.get_attribute("value"))
        if notes:
            page.get_by_role("button", name="Notes").click()

    return turn


def _own_a_book(page: Page) -> None:
    page.get_by_label("The Ferry Fare").check()
    page.get_by_label("For", exact=True).select_option(label="Year 2, National curriculum")
    page.get_by_role("status").filter(has_text="with 1 of").wait_for()
    _open_answers(page)


STATES: Mapping[str, tuple[str, Callable[[Page], None]]] = {
    **{f"class screen, slide {n + 1}": (TEMPLATES["class screen"], _slide(n)) for n in (1, 4, 5, 7)},
    "class screen, notes": (TEMPLATES["class screen"], _slide(6, notes=True)),
    **{f"class screen to try, slide {n + 1}": (TEMPLATES["class screen to try"], _slide(n)) for n in (2, 3, 5, 9)},
    "class screen, a clock": ("books/ferry-fare/session-1-screen.html", _slide(12)),
    "answers open": (TEMPLATES["session"], _open_answers),
    "answers of every kind open": (TEMPLATES["kinds of activity"], _open_answers),
    "a word's meaning shown": (TEMPLATES["session"], _meaning_shown),
    "filters chosen": ("find.html?year=2&concept=equality", _wait_for_results),
    "words looked for": ("find.html?q=equal", _wait_for_results),
    "nothing found": ("find.html?q=zzzzzz", _wait_for_results),
    "plan with a session": (TEMPLATES["session"], _put_in_plan),
    "story, all pages": (TEMPLATES["story"], _all_pages),
    "a book owned": (TEMPLATES["shelf"], _own_a_book),
    "folds of a book open": (TEMPLATES["book"], _open_answers),
    "folds of a series open": (TEMPLATES["series for two years"], _open_answers),
    "weeks laid": ("series/a-term-on-plover-quay.html", _lay_the_weeks),
    "weeks that cannot be laid": ("series/a-term-on-plover-quay.html", _ask_what_cannot_be),
}
"""States by name: the page to start from, and what to do there."""
