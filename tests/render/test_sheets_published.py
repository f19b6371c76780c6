"""Print sheets as the site has them: where each is, the same bytes every time, and nothing made that has not changed."""

from __future__ import annotations

import os
import shutil
from dataclasses import replace
from pathlib import Path

import pytest
from PIL import Image
from project import PROJECT, all_activities, collection
from render.sheets_made import WHOLE, cache, frozen_sheets
from storymaths.model.collection import Collection
from storymaths.model.session import Session
from storymaths.publish import sheet_cache
from storymaths.publish.sheets import Sheet, prints, sheets_of, write_sheets
from storymaths.render.sheets.exit_slips import how_answered
from storymaths.render.sheets.other_numbers import OTHER_NUMBERS
from storymaths.render.sheets.typesetting import copy_of, set_in_type
from storymaths.render.site import Site


def test_every_session_has_a_plan_an_exit_question_and_a_key_and_every_home_activity_a_half_page() -> None:
    for page in collection().documents:
        source = page.path.removeprefix("content/")
        kinds = [sheet.what for sheet in frozen_sheets() if sheet.source == source and sheet.what != OTHER_NUMBERS]
        if page.fields.kind == "session":
            assert kinds[0] == "plan", source
            assert kinds[-2:] == ["answers", "whole-lesson"], source
            assert isinstance(page.fields, Session)
            on_paper = any(how_answered(page.fields.exit_question.ask, collection().reference.prose.answering))
            assert ("exit-question" in kinds) == on_paper, f"{source}: what is told aloud needs no slip"
        if page.fields.kind == "home":
            assert kinds == ["half-page"], source
        if page.fields.kind == "book":
            assert kinds[0] == "story-booklet", "a collection's own stories may be printed"
            assert kinds[-1] == "all-sheets", source


def test_addresses_stand_beside_their_page_and_are_used_once() -> None:
    sheets = frozen_sheets()
    assert "books/cliff-house-lift/session-2-plan.pdf" in {sheet.address for sheet in sheets}
    assert len({sheet.address for sheet in sheets}) == len(sheets)


def test_what_a_sheet_says_of_itself() -> None:
    cards = _sheet("books/cliff-house-lift/session-2-cast-cards.pdf")
    assert cards.title == "Cast cards: Who is worth Camel?"
    assert cards.copies.startswith(f"{cards.paper} sheet")
    assert "for a class of 30" in cards.copies
    plan = _sheet("books/cliff-house-lift/session-2-plan.pdf")
    assert (plan.pages, plan.paper, plan.copies) == (2, 1, "1 sheet, for the adult. Print it on both sides.")


def _sheet(address: str) -> Sheet:
    return next(sheet for sheet in frozen_sheets() if sheet.address == address)


def test_the_whole_set_holds_every_page_of_every_sheet_of_the_book() -> None:
    for whole in (sheet for sheet in frozen_sheets() if sheet.what == "all-sheets"):
        folder = whole.source.removesuffix("index.md")
        own = [one for one in frozen_sheets() if one.source.startswith(folder)]
        pages = sum(one.pages for one in own if one.what not in (*WHOLE, "story-booklet", OTHER_NUMBERS))
        assert pages < whole.pages <= pages + 3, "and a list of what there is"


def test_a_lesson_is_one_file_offered_first_with_a_list_of_what_to_print_how_often() -> None:
    for whole in (sheet for sheet in frozen_sheets() if sheet.what == "whole-lesson"):
        own = [
            one for one in frozen_sheets() if one.source == whole.source and one.what not in (whole.what, OTHER_NUMBERS)
        ]
        assert whole.pages == 1 + sum(one.pages for one in own), whole.source
        rows = whole.data.parts[0].data["rows"]
        assert [row["copies"] for row in rows] == [one.copies for one in own]
        assert prints(frozen_sheets())[whole.source][0].address == whole.address


def test_a_book_whose_story_may_not_be_printed_has_no_booklet() -> None:
    whole = collection()
    book = whole.books["ferry-fare"]
    guarded = replace(book, fields=book.fields.model_copy(update={"rights": "in-copyright"}))
    story = next(page for page in whole.documents if page.fields.kind == "story" and page.fields.book == "ferry-fare")
    for record, printed in ((book, 1), (guarded, 0)):
        of_book = Collection((record, story), (), whole.files, whole.reference)
        made = sheets_of(Site(of_book, {}), PROJECT, cache())
        assert [sheet.what for sheet in made].count("story-booklet") == printed


def test_unchanged_sheets_are_not_made_again(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    before = frozen_sheets()

    def never(copy: str) -> None:
        raise AssertionError("a sheet was made that had not changed")

    monkeypatch.setattr(sheet_cache, "set_in_type", never)
    assert sheets_of(Site(collection(), all_activities()), PROJECT, cache()) == list(before)


def test_written_sheets_are_whole_and_what_is_no_longer_used_is_forgotten(tmp_path: Path) -> None:
    kept, site = tmp_path / "cache", tmp_path / "site"
    some = [sheet for sheet in frozen_sheets() if "session-1" in sheet.address]
    shutil.copytree(cache(), kept)
    for name in ("of-last-week.pdf", "of-another-build.pdf"):
        (kept / name).write_bytes(b"old")
    os.utime(kept / "of-last-week.pdf", (0, 0))
    write_sheets(some, site, kept)
    assert not (kept / "of-last-week.pdf").exists()
    assert (kept / "of-another-build.pdf").exists(), "another process may be about to copy it"
    for sheet in some:
        assert (site / sheet.address).read_bytes().startswith(b"%PDF-")
        assert (site / sheet.address).with_suffix(".png").read_bytes().startswith(b"\x89PNG")


def test_previews_are_small_pictures_of_an_upright_page() -> None:
    for sheet in frozen_sheets():
        preview = sheet_cache.png_path(cache(), sheet.key)
        with Image.open(preview) as picture:
            wide, high = picture.size
        assert high / wide == pytest.approx(297 / 210, abs=0.01), sheet.address
        assert preview.stat().st_size < 25_000, sheet.address


def test_the_same_bytes_in_another_folder_and_another_process(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """One of each sort, every second in the other process; ``tests/bench/build_twice.py`` holds it for all."""
    sheets = list({sheet.what: sheet for sheet in frozen_sheets() if sheet.what not in WHOLE}.values())
    assert len(sheets) > 15
    monkeypatch.setattr(sheet_cache, "WORTH_A_SECOND_PROCESS", 2)
    other = tmp_path / "elsewhere"
    sheet_cache.fill(other, {sheet.key: copy_of(sheet.data, sheet.house) for sheet in sheets})
    for sheet in sheets:
        for path_of in (sheet_cache.pdf_path, sheet_cache.png_path):
            assert path_of(other, sheet.key).read_bytes() == path_of(cache(), sheet.key).read_bytes(), sheet.address


def test_the_same_sheet_twice_in_one_process() -> None:
    sheet = _sheet("books/cliff-house-lift/session-2-cast-cards.pdf")
    assert set_in_type(copy_of(sheet.data, sheet.house)) == set_in_type(copy_of(sheet.data, sheet.house))


def test_a_second_process_that_fails_leaves_its_share_to_the_first(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setattr(sheet_cache, "_CHILD", "raise SystemExit(1)")
    monkeypatch.setattr(sheet_cache, "WORTH_A_SECOND_PROCESS", 2)
    some = frozen_sheets()[:4]
    sheet_cache.fill(tmp_path, {sheet.key: copy_of(sheet.data, sheet.house) for sheet in some})
    assert all(sheet_cache.pages_of(tmp_path, sheet.key) == sheet.pages for sheet in some)
