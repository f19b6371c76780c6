"""The box for the class size on a session, and the table it changes."""

from __future__ import annotations

import pytest
from playwright.sync_api import Page, expect
from project import collection, reference
from storymaths.model.session import Session

PAGES = [page.path.removeprefix("content/").removesuffix(".md") for page in collection().of_kind(Session)]


def open_table(page: Page, address: str) -> None:
    """Leads to a session and unfolds what there is to get ready."""
    page.goto(address)
    page.locator(".get-ready summary").first.click()


def quantities(page: Page) -> list[int]:
    return [int(text) for text in page.locator("table.materials td[data-count]").all_inner_texts()]


def expected(path: str, children: int) -> list[int]:
    session = next(page.fields for page in collection().of_kind(Session) if page.path == f"content/{path}.md")
    return [needed.for_class(children, session.group_size) for needed in session.materials]


@pytest.mark.reads(java_script_enabled=False)
def test_without_script_every_table_is_right_for_the_usual_class(page: Page, base: str) -> None:
    for path in PAGES:
        open_table(page, f"{base}{path}.html")
        assert quantities(page) == expected(path, reference().limits.class_size)


@pytest.mark.parametrize("path", PAGES)
def test_every_quantity_follows_the_class(page: Page, base: str, path: str) -> None:
    open_table(page, f"{base}{path}.html")
    for children in (1, 2, 17, 27, 30, 31, 60):
        page.get_by_label("Children in the class").fill(str(children))
        assert quantities(page) == expected(path, children)
        expect(page.locator("table.materials [data-class-of]").first).to_have_text(str(children))


def test_a_number_that_cannot_be_a_class_is_put_right(page: Page, base: str) -> None:
    open_table(page, f"{base}{PAGES[0]}.html")
    box = page.get_by_label("Children in the class")
    for typed, taken in (("0", "30"), ("", "30"), ("-4", "1"), ("900", "60")):
        box.fill(typed)
        box.blur()
        expect(box).to_have_value(taken)
        assert quantities(page) == expected(PAGES[0], int(taken))


def test_the_change_is_announced_once_it_is_made(page: Page, base: str) -> None:
    open_table(page, f"{base}{PAGES[0]}.html")
    page.get_by_label("Children in the class").fill("24")
    page.get_by_label("Children in the class").blur()
    expect(page.locator(".class-size [role=status]")).to_have_text("The table is for 24 children.")
