"""What pages, sheets and keys show of other years: just what the bends say, and of what is the same no second copy."""

from __future__ import annotations

import html
import re
from collections.abc import Iterator

from project import all_activities, collection
from render.sheets_made import sheet_context
from storymaths.activities.memory import Memory
from storymaths.activities.on_pages import PageActivity
from storymaths.model.document import Document
from storymaths.model.fields import year_name
from storymaths.model.session import Session
from storymaths.render.session_page import draw_session
from storymaths.render.sheets.answer_key import answer_key
from storymaths.render.sheets.recording import recording_sheet
from storymaths.render.site import Site

PAGES = all_activities()
SITE = Site(collection(), PAGES, Memory())


def sessions() -> Iterator[tuple[Document[Session], tuple[PageActivity, ...]]]:
    for page in collection().of_kind(Session):
        yield page, PAGES[page.path]


def words(text: str) -> str:
    return " ".join(html.unescape(re.sub("<[^>]*>", "", text)).split())


def bends_on(page: Document[Session]) -> dict[str, str]:
    """What a page shows of each bend, by its year."""
    drawn = draw_session(SITE, page).html
    articles = re.findall(r'<article class="bend".*?</article>', drawn, re.DOTALL)
    return {words(re.findall("<h3.*?</h3>", one)[0]).removeprefix("The same pages in "): words(one) for one in articles}


def test_a_page_has_a_fold_for_each_version_and_for_what_is_the_same_a_phrase() -> None:
    phrases = 0
    for page, activities in sessions():
        drawn = draw_session(SITE, page).html
        blocks = re.findall(r'<section class="activity".*?</section>', drawn, re.DOTALL)
        assert len(blocks) == len(activities)
        for block, activity in zip(blocks, activities, strict=True):
            versions = activity.worked.versions
            folds = re.findall(r'<div class="version" data-year="(\d)"', block)
            assert sorted(map(int, folds)) == sorted(year for year, one in versions.items() if not one.same)
            same = [year for year, one in versions.items() if one.same]
            assert block.count(": the same.") == bool(same)
            phrases += bool(same)
        assert "The same numbers." not in words(drawn)
    assert phrases, "the collection has some that are the same"


def test_a_bend_says_what_is_done_of_every_activity_and_what_it_promises() -> None:
    for page, activities in sessions():
        shown = bends_on(page)
        for year, bend in page.fields.bends.items():
            told = shown[year_name(year)]
            for activity in activities:
                version = activity.worked.versions.get(year)
                assert activity.worked.fields is not None
                title = version.fields.title if version else activity.worked.fields.title
                in_words_only = all(year not in one.worked.versions for one in activities)
                assert (words(title).replace("'", "’") in told.replace("'", "’")) is not in_words_only
            assert ("In words only" in told) is all(year not in one.worked.versions for one in activities)
            assert (f"Numbers to {bend.up_to}." in told) is (bend.up_to is not None)
            assert ("Children write nothing." in told) is (bend.written is False or (year == 0 and not bend.written))


def test_promises_are_told_as_a_teacher_says_them() -> None:
    told = bends_on(next(page for page, _ in sessions() if page.source.endswith("cliff-house-lift/session-1.md")))[
        "Year 1"
    ]
    assert "With Puffin, Hamster and Worm. Numbers to 4. Weigh the three" in told
    assert "The only signs are = and ≠." in told
    clock = bends_on(next(page for page, _ in sessions() if page.source.endswith("ferry-fare/session-1.md")))
    assert "O’clock only." in clock["Reception"]
    assert "Clock times to five minutes." in clock["Year 2"]


def test_a_recording_sheet_has_a_page_for_a_year_only_where_something_else_is_written() -> None:
    aloud = 0
    for page, activities in sessions():
        sheet = recording_sheet(sheet_context(), page, sheet_context().activities(page))
        assert sheet is not None
        own = page.fields.year
        changed = {
            year
            for activity in activities
            for year, version in activity.worked.versions.items()
            if version.written and not version.same
        }
        assert len(sheet.parts) == 1 + len(changed - {own})
        aloud += any(not one.written for activity in activities for one in activity.worked.versions.values())
        tasks = [str(task) for part in sheet.parts for task in part.data["tasks"]]
        assert len(tasks) == len(set(tasks)), "no task stands there twice"
    assert aloud, "the collection has some that nobody writes"


def test_the_key_tells_the_same_in_a_phrase() -> None:
    for page, activities in sessions():
        key = answer_key(sheet_context(), page, sheet_context().activities(page))
        for shown, activity in zip(key.parts[0].data["activities"], activities, strict=True):
            versions = activity.worked.versions
            assert len(shown["versions"]) == 1 + sum(not one.same for one in versions.values())
            same = [year_name(year) for year, one in sorted(versions.items()) if one.same]
            assert shown["same"] == (f"{' and '.join(same)}: the same." if same else "")
