"""A kind of page the finder's scripts have never heard of: they show what the data say of it."""

from __future__ import annotations

import json
from pathlib import Path

from playwright.sync_api import Page, Route, expect

POEMS = ["p", "poem", "Poems", "plays with", "text-card", "from", 0]


def test_the_finder_shows_a_kind_by_what_its_data_say(page: Page, base: str, site: Path) -> None:
    data = json.loads((site / "finder-data.json").read_text(encoding="utf-8"))
    rows = data["rows"]
    last = rows["kind"].rindex("h")
    rows["kind"] = rows["kind"][:last] + "p" + rows["kind"][last + 1 :]
    rows["year"] = rows["year"][:last] + "-" + rows["year"][last + 1 :]
    data["kinds"].insert(0, POEMS)
    title, concept = (
        rows["title"].split("\n")[last],
        data["concepts"][int(rows["concepts"].split(",")[last].split()[0])],
    )

    def answer(route: Route) -> None:
        route.fulfill(json=data)

    page.route("**/finder-data.json", answer)
    page.goto(f"{base}find.html?kind=poem&concept={concept[0]}")
    card = page.locator(".results > li.text-card")
    expect(card.locator("h2")).to_have_text(title)
    expect(card.locator(".of")).to_contain_text("from ")
    expect(card.locator(".why")).to_contain_text(f"plays with {concept[1].lower()}")
    expect(card.locator(".plan-button, img, svg.roof, .step-number, .year")).to_have_count(0)
    expect(page.locator(".chips")).to_contain_text("Poems")
