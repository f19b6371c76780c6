"""Over the weeks: what sessions begin with, the record for the class and the questions for the end, each with its answers."""

from __future__ import annotations

import csv
import io
from dataclasses import replace

import pytest
from project import activities_on, all_activities, collection
from storymaths.covers.path import path_of
from storymaths.covers.starters import BACK, end_questions, in_short, starter_of
from storymaths.model.document import Document
from storymaths.model.series import Series
from storymaths.publish.class_records import class_records
from storymaths.render.screens.begin import begin_slides
from storymaths.render.sheets import series_sheets as of_series
from storymaths.render.sheets.series_sheets import series_sheets
from storymaths.render.sheets.sheet import SheetData
from storymaths.render.sheets.sheet_context import SheetContext
from storymaths.render.site import Site

SERIES = collection().of_kind(Series)


def sheets_of(page: Document[Series]) -> dict[str, SheetData]:
    made = series_sheets(SheetContext(collection(), activities_on, lambda source: None), page)
    return {one.what: one for one in made}


@pytest.mark.parametrize("page", SERIES, ids=lambda page: page.source)
def test_a_session_begins_with_what_was_one_three_and_seven_sessions_before(page: Document[Series]) -> None:
    sessions = path_of(page.fields, collection()).sessions
    assert starter_of(sessions, 0, activities_on) == []
    for place in range(len(sessions)):
        for taken in starter_of(sessions, place, activities_on):
            assert taken.before in BACK
            assert taken.page is sessions[place - taken.before]
            assert taken.solution.answers, "nothing is asked whose answer is not known"


@pytest.mark.parametrize("page", SERIES, ids=lambda page: page.source)
def test_every_question_that_is_printed_has_its_answer_on_the_key(page: Document[Series]) -> None:
    sheets = sheets_of(page)
    for asked, key in (("starters", "starters-answers"), ("end-questions", "end-answers")):
        if asked not in sheets:
            continue
        tasks = [task for part in sheets[asked].parts for task in part.data["tasks"]]
        told = [version for one in sheets[key].parts[0].data["activities"] for version in one["versions"]]
        assert [task["ask"] for task in tasks] == [version["ask"] for version in told]
        assert all(version["answers"] for version in told)


@pytest.mark.parametrize("page", SERIES, ids=lambda page: page.source)
def test_a_question_for_the_end_is_for_an_objective_its_session_teaches(page: Document[Series]) -> None:
    sessions = path_of(page.fields, collection()).sessions
    found = end_questions(sessions, activities_on, collection().reference)
    assert len({one.key for one in found}) == len(found)
    for one in found:
        framework, code = one.key
        assert code in {claim.code for claim in one.page.fields.objectives[framework]}


@pytest.mark.parametrize("page", SERIES, ids=lambda page: page.source)
def test_the_record_has_every_session_s_look_fors_and_question_and_no_name(page: Document[Series]) -> None:
    sessions = path_of(page.fields, collection()).sessions
    record = sheets_of(page)["record"]
    assert [len(part.data["looks"]) for part in record.parts] == [len(one.fields.look_for) for one in sessions]
    (text,) = (text for address, text in class_records(Site(collection())).items() if page.source[:-3] in address)
    head, *rows = csv.reader(io.StringIO(text.removeprefix("\ufeff")))
    assert len(head) == 1 + sum(len(one.fields.look_for) + 1 for one in sessions)
    assert len(rows) == collection().reference.limits.class_size
    assert not any(cell for row in rows for cell in row)


def test_a_class_screen_begins_with_its_series_and_not_in_the_first_session() -> None:
    page = SERIES[0]
    site = Site(collection(), all_activities())
    first, *_, last = path_of(page.fields, collection()).sessions
    assert [slide.title for slide in begin_slides(site, first)] == []
    assert all(slide.title.startswith("To begin, from ") for slide in begin_slides(site, last))


def test_a_task_is_cut_only_where_each_line_has_its_own_answer() -> None:
    for page in collection().documents:
        for activity in activities_on(page):
            if activity.worked.solution is not None:
                short = in_short(activity.worked.solution)
                assert short is activity.worked.solution or len(short.task.lines) == len(short.answers)


def test_a_long_series_asks_a_page_for_each_book_and_every_child_has_each(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(of_series, "_ONE_PAGE", 1)
    page = SERIES[0]
    end = sheets_of(page)["end-questions"]
    titles = [run.book.fields.title for run in path_of(page.fields, collection()).runs]
    assert [part.data["heading"] for part in end.parts] == [f"At the end of {title}" for title in titles]
    assert end.use.sheets(len(titles)) == end.use.children * len(titles)


def test_a_class_that_writes_nothing_has_a_record_and_no_questions_on_paper() -> None:
    page = replace(SERIES[0], fields=SERIES[0].fields.model_copy(update={"year": 0, "also": ()}))
    assert set(sheets_of(page)) == {"record"}
