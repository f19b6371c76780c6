"""Other numbers as they are offered: folded under their activity, and on a sheet with a mark for each and its answers."""

from __future__ import annotations

from project import activities_on, collection
from storymaths.model.document import Document
from storymaths.model.session import Session
from storymaths.render.activity import draw_activity
from storymaths.render.sheets.other_numbers import MARKS, other_numbers_sheet
from storymaths.render.sheets.sheet import SheetData
from storymaths.render.sheets.sheet_context import SheetContext
from storymaths.render.site import Site


def sheet_of(page: Document[Session]) -> SheetData | None:
    context = SheetContext(collection(), activities_on, lambda source: None)
    return other_numbers_sheet(context, page, context.activities(page))


def a_session_with_others() -> Document[Session]:
    return next(
        page
        for page in collection().of_kind(Session)
        if any(len(found.worked.other_sets) > 1 for found in activities_on(page))
    )


def test_a_page_for_each_set_has_its_own_mark_and_the_answers_come_last() -> None:
    sheet = sheet_of(a_session_with_others())
    assert sheet is not None
    *pages, key = sheet.parts
    assert [page.data["mark"]["sign"] for page in pages] == list(MARKS[: len(pages)])
    assert [page.layout for page in pages] == ["recording"] * len(pages)
    assert key.layout == "answer_key"
    asked = sum(len(page.data["tasks"]) for page in pages)
    assert asked == sum(len(one["versions"]) for one in key.data["activities"])
    assert all(version["answers"] for one in key.data["activities"] for version in one["versions"])


def test_they_are_folded_under_their_activity_with_their_answers_in_a_fold() -> None:
    page = a_session_with_others()
    found = next(one for one in activities_on(page) if len(one.worked.other_sets) > 1)
    site = Site(collection())
    html = draw_activity(site, found.worked, page.source, "activity-1", others=found.worked.other_sets)
    _, _, others = html.partition('<details class="other-numbers"><summary>Other numbers</summary>')
    assert others.count('<details class="answers">') == len(found.worked.other_sets)
    assert "other-numbers" not in draw_activity(site, found.worked, page.source, "activity-1")
