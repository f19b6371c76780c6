"""What a child or a family is handed of the demonstration can stand alone: held by its data, and by a look at the paper.

A sheet of every sort is read by veraPDF.

What a sheet has to have is common practice, no source; sizes of letters are read by pdfplumber.
"""

from __future__ import annotations

import io
import json
import re
from collections.abc import Iterator
from functools import lru_cache
from pathlib import Path
from typing import Any

import pdfplumber
import pytest
from outside.verapdf import NotToBeHad, faults_of
from project import ROOT
from render.ink import lowest_on
from run_folder import worked_out_once
from storymaths.expression.number_words import PART_OF, SO_MANY_OF
from storymaths.expression.say import COUNTS
from storymaths.model.activity import GAP, Solution, Task
from storymaths.render.sheets.exit_slips import how_answered
from storymaths.render.sheets.half_page import half_page
from storymaths.render.sheets.of_page import book_sheets, home_sheets, session_sheets
from storymaths.render.sheets.series_sheets import series_sheets
from storymaths.render.sheets.sheet import SheetData
from storymaths.render.sheets.sheet_context import SheetActivity, SheetContext
from storymaths.render.sheets.typesetting import copy_of, set_in_type

from .demonstration import activities_on, demonstration

NAMED = {
    "recording-sheet": r"recording sheet|printed sheet",
    "cast-cards": r"cast cards?",
    "exit-question": r"exit question",
}
"""What a lesson calls the sheets that it speaks of."""
HARDEST_HOMES = (
    *("roundabout-parcel/home-2", "lamp-loft-lift/home-1", "twenty-lanterns/home-1"),
    *("the-door-nobody-counted/home-2", "two-mountains-four-pebbles/home-2", "penny-a-leg/home-2"),
)
"""With the most words, a table, and the longest answer; then those with the most drawings that have letters."""
SMALLEST = 10.9
"""Points, of 11 that are asked for: what is rounded away does not count."""
A4_HIGH, FOOT = 842, 785
"""Points: how high the paper is, and where the foot of a page begins."""


def read(source: str) -> str | None:
    file = ROOT / "content" / source
    return file.read_text(encoding="utf-8") if file.is_file() else None


def context() -> SheetContext:
    return SheetContext(demonstration(), activities_on, read)


@lru_cache(maxsize=1)
def handed_out() -> dict[str, tuple[list[SheetActivity], dict[str, SheetData]]]:
    """The activities and the sheets of each session, by its source."""
    return worked_out_once("handed-out", _handed_out)


def _handed_out() -> dict[str, tuple[list[SheetActivity], dict[str, SheetData]]]:
    sessions = [page for name in demonstration().books for page in demonstration().sessions_of(name)]
    return {
        page.source: (context().activities(page), {one.what: one for one in session_sheets(context(), page)})
        for page in sessions
    }


def child_tasks() -> Iterator[tuple[str, Task, dict[str, Any], SheetData]]:
    """Each task that a child writes, as worked out and as it stands on the sheet."""
    for source, (activities, sheets) in handed_out().items():
        sheet = sheets.get("recording-sheet")
        for part in sheet.parts if sheet else ():
            shown = {text_of(task["ask"]): task for task in part.data["tasks"]}
            for activity in activities:
                year = part.data["mark"]["year"] if part.data["mark"] else activity.year
                for task in [activity.by_year[year].task] if year in activity.by_year.keys() - activity.aloud else []:
                    for ask, one in shown.items():
                        if sheet and plain(ask) == plain(task.ask):
                            yield f"{source}, {activity.title}", task, one, sheet


def text_of(data: Any) -> str:
    """All words in runs and whatever holds them."""
    if isinstance(data, str):
        return data
    if isinstance(data, dict) and "style" in data:
        return str(data["text"])
    inner = data.values() if isinstance(data, dict) else data if isinstance(data, list) else ()
    return " ".join(map(text_of, inner))


def plain(text: str) -> str:
    return re.sub(r"\W", "", text)


def words_on(task: dict[str, Any], sheet: SheetData) -> str:
    drawn = (
        re.sub(r"<[^>]+>", " ", sheet.pictures[one["picture"]].partition("</style>")[2]) for one in task["figures"]
    )
    return f"{text_of(task)} {' '.join(drawn)}"


def test_every_number_that_a_task_gives_stands_on_its_sheet() -> None:
    seen = 0
    for where, task, shown, sheet in child_tasks():
        rows = [cell for row in task.table.rows for cell in row] if task.table else []
        given = " ".join([task.ask, *map(str, task.lines), *(one.says for one in task.shows), *rows])
        numbers = set(re.findall(r"\d+", given))
        assert numbers <= set(re.findall(r"\d+", words_on(shown, sheet))), where
        seen += len(numbers)
    assert seen > 200


def test_there_is_one_place_for_an_answer_and_always_one() -> None:
    for where, _, shown, _ in child_tasks():
        written_in = any(one["written-in"] for one in shown["figures"])
        cells = [text_of(cell).strip() for row in (shown["table"] or {"rows": []})["rows"] for cell in row]
        assert (not shown["lines"]) == (written_in or any(not cell or GAP in cell for cell in cells)), where


def test_each_thing_asked_after_has_a_line_with_its_name() -> None:
    found = [(task, shown) for _, task, shown, _ in child_tasks() if task.asks_after or task.in_order]
    for task, shown in found:
        labels = [text_of(line).replace(GAP, "").strip() for line in shown["lines"]]
        places = [f"{place}:" for place in ("1st", "2nd", "3rd", "4th", "5th", "6th", "7th", "8th")[: len(task.lines)]]
        assert labels == (places if task.in_order else [f"{one}:" for one in task.asks_after])
    assert len(found) > 5


def test_no_drawing_tells_who_has_more_and_no_lone_line_tells_that_there_is_one_answer() -> None:
    for where, task, shown, sheet in child_tasks():
        assert not [one for one in shown["figures"] if "figure-two-bars" in sheet.pictures[one["picture"]]], where
        if len(shown["lines"]) == 1 and text_of(shown["lines"]).count(GAP):
            line = text_of(shown["lines"])
            assert line.count(GAP) == 1 or task.filled_once, where
            assert len(re.findall(r"\d+", line)) > 1 or ":" in line or "." in line, where


def test_a_week_that_repeats_stands_in_rows_of_seven() -> None:
    (sheet,) = {id(sheet): sheet for where, task, _, sheet in child_tasks() if "nobody" in str(task.lines)}.values()
    drawn = next(svg for svg in sheet.pictures.values() if ">nobody<" in svg)
    columns = set(re.findall(r'<rect[^>]* x="([^"]+)"', drawn.partition("</style>")[2]))
    assert len(columns) == 7


def test_the_sheets_that_a_lesson_speaks_of_are_printed() -> None:
    answering = demonstration().reference.prose.answering
    told = {  # what a child says or does needs no slip
        ("exit-question", page.source)
        for name in demonstration().books
        for page in demonstration().sessions_of(name)
        if not any(how_answered(page.fields.exit_question.ask, answering))
    }
    spoken = 0
    for source, (_, sheets) in handed_out().items():
        text = (read(source) or "").lower()
        for what, words in NAMED.items():
            if re.search(rf"\b(?:{words})\b", text) and (what, source) not in told:
                assert what in sheets, f"{source} speaks of {words}"
                spoken += 1
    assert spoken > 20


def test_cards_that_a_note_names_are_the_only_ones_printed() -> None:
    _, sheets = handed_out()["books/long-for-ten/session-1.md"]
    assert [card["number"] for card in sheets["number-cards"].parts[0].data["cards"]] == ["60", "4"]
    assert len(sheets["number-cards"].parts) == 1
    _, sheets = handed_out()["books/two-mountains-four-pebbles/session-3.md"]
    [part] = sheets["number-cards"].parts
    assert [card["number"] for card in part.data["cards"]] == [str(number) for number in range(1, 13)]
    _, sheets = handed_out()["books/soup-at-the-elbow/session-3.md"]
    [part] = sheets["word-cards"].parts
    assert [card["number"] for card in part.data["cards"]] == ["m", "cm", "kg", "g", "°C", "litres", "ml"]
    _, sheets = handed_out()["books/roundabout-parcel/session-3.md"]
    parcels = [card["number"] for card in sheets["cast-cards"].parts[0].data["cards"]]
    assert parcels == ["cylinder", "cube", "cuboid", "triangular\u00a0prism", "square-based\u00a0pyramid", "cone"]


def test_a_slip_that_asks_for_a_drawing_has_room_for_one() -> None:
    slips = [one["exit-question"].parts[0].data for _, one in handed_out().values() if "exit-question" in one]
    assert {text_of(one["ask"]) for one in slips if one["draws"]} == {
        text_of(one["ask"]) for one in slips if re.search(r"\b[Dd]raw\b", text_of(one["ask"]))
    }
    assert 3 <= sum(one["draws"] for one in slips) < len(slips)


def test_a_slip_that_points_at_something_shows_it() -> None:
    slips = [one["exit-question"].parts[0].data for _, one in handed_out().values() if "exit-question" in one]
    pointing = [one for one in slips if re.search(r"\bhere (?:is|are)\b(?!.*\d)", text_of(one["ask"]), re.IGNORECASE)]
    assert [one["heading"] for one in pointing if not (one["picture"] and one["alt"])] == []
    assert pointing


def test_what_a_slip_points_at_is_large_enough_to_read() -> None:
    _, sheets = handed_out()["books/soup-at-the-elbow/session-4.md"]
    with pdfplumber.open(io.BytesIO(set_in_type(copy_of(sheets["exit-question"])).pdf)) as pdf:
        drawn = [one for one in pdf.pages[0].curves if one["bottom"] < pdf.pages[0].height / 3]
        face = max(one["bottom"] - one["top"] for one in drawn)
    assert face > 35 * 72 / 25.4, "a clock is read at 35 mm or more"


def test_a_key_has_no_second_page_for_a_few_lines() -> None:
    for name in (
        "the-door-nobody-counted/session-1",
        "lamp-loft-lift/session-1",
        "two-mountains-four-pebbles/session-6",
    ):
        _, sheets = handed_out()[f"books/{name}.md"]
        with pdfplumber.open(io.BytesIO(set_in_type(copy_of(sheets["answers"])).pdf)) as pdf:
            assert len(pdf.pages) == 1, name
            assert min(one["size"] for one in pdf.pages[0].chars if one["top"] < 780) > 8.7


def test_no_version_is_headed_by_a_number_of_another_year() -> None:
    seen, wrong = 0, []
    for source, (activities, _) in handed_out().items():
        for activity in activities:
            own = " ".join(words_of_task(activity.own)).lower()
            for year in activity.by_year.keys() - {activity.year}:
                title, version = activity.titles[year], " ".join(words_of_task(activity.by_year[year])).lower()
                for number in {number for word, number in HEADED.items() if re.search(rf"\b{word}\b", title.lower())}:
                    words = "|".join(word for word, worth in HEADED.items() if worth == number)
                    told = re.compile(rf"\b(?:{number}|{words})\b")
                    wrong += [f"{source}: {title}, {year}"] if told.search(own) and not told.search(version) else []
                    seen += 1
    assert wrong == [], wrong
    assert seen > 10


HEADED = {
    **{word: count for count, word in enumerate(COUNTS) if count > 1},
    **{f"in {word}": SO_MANY_OF[word] for word in ("twos", "threes", "fours", "fives", "sixes", "eights", "tens")},
    **{word: f"1/{part.denominator}" for word, part in PART_OF.items()},
}
"""Numbers in the words of a title."""


def words_of_task(solution: Solution[Any]) -> Iterator[str]:
    task = solution.task
    yield from (task.ask, *map(str, task.lines), *(figure.alt for figure in task.figures))
    yield from (answer.says for answer in solution.answers)


def test_coins_have_no_sign_before_its_year() -> None:
    seen = 0
    for where, _, shown, sheet in child_tasks():
        part = next(part for part in sheet.parts if shown in part.data["tasks"])
        for svg in [sheet.pictures[one["picture"]] for one in shown["figures"]]:
            if "figure-coins" in svg and part.data["mark"]["year"] < 2:  # p is new in Year 2: site_data/years.yaml
                assert not re.search(r">\d+p<", svg), where
                seen += 1
    assert seen


def test_a_lesson_begins_with_what_each_lesson_before_it_has_to_take_up() -> None:
    writing = [page for page in demonstration().series.values() if page.fields.year]  # Reception is asked aloud
    for page in writing:
        starters = next(one for one in series_sheets(context(), page) if one.what == "starters")
        asked = [len(part.data["tasks"]) for part in starters.parts]
        assert sum(asked) >= 1.5 * len(asked)


def test_no_straight_quotation_mark_is_printed() -> None:
    for sheets in (sheets for _, sheets in handed_out().values()):
        for sheet in sheets.values():
            printed = json.loads(copy_of(sheet))
            assert not re.search("[\"']", f"{printed['title']} {text_of(printed['parts'])}"), sheet.title


def test_no_second_page_is_for_a_few_lines() -> None:
    for source, (_, sheets) in handed_out().items():
        if (sheet := sheets.get("recording-sheet")) is None:
            continue
        low = lowest_on(set_in_type(copy_of(sheet)).pdf, FOOT)
        assert len(low) <= 2 * len(sheet.parts), source
        for number, lowest in enumerate(low, 1):
            assert lowest > A4_HIGH / 4, f"{source}: page {number} is not a quarter full"


def test_a_half_page_has_a_picture_large_letters_room_to_write_and_no_answer_in_sight() -> None:
    homes = {page.source: page for name in demonstration().books for page in demonstration().homes_of(name)}
    for name in HARDEST_HOMES:
        sheet = half_page(context(), homes[f"books/{name}.md"])
        (part,) = sheet.parts
        assert part.data["picture"], name
        with pdfplumber.open(io.BytesIO(set_in_type(copy_of(sheet)).pdf)) as pdf:
            front, back = pdf.pages
            small = [one for one in front.chars if one["size"] < SMALLEST and one["top"] > 70 and one["top"] < 400]
            assert not small, f"{name}: {small[0]['text']} of {small[0]['size']} points"
            drawn = (*front.lines, *front.curves, *front.rects)
            lines = [one for one in drawn if 200 < one["x1"] - one["x0"] < 400 and one["bottom"] - one["top"] < 2]
            assert lines, f"{name}: nowhere to write"
            for puzzle in part.data["puzzles"]:  # what is asked about stands there
                asked = [*puzzle["shown"]["lines"], *(() if puzzle["shown"]["figures"] else puzzle["shown"]["given"])]
                numbers = set(re.findall(r"\d+", text_of(asked)))
                assert numbers <= set(re.findall(r"\d+", front.extract_text())), name
            answers = [plain(text_of(answer)) for puzzle in part.data["puzzles"] for answer in puzzle["answers"]]
            assert not [one for one in answers if one in plain(front.extract_text())], name
            turned = [one for one in back.chars if not one["upright"] or one["matrix"][0] < 0]
            assert turned or not answers, f"{name}: the answers are not on their heads"


def write_one_of_each_sort(folder: Path) -> list[Path]:
    """The sheets of the demonstration that veraPDF reads, in files."""
    sorts = {what: sheet for _, sheets in handed_out().values() for what, sheet in sheets.items()}
    for name, book in demonstration().books.items():
        of_homes = (sheet for page in demonstration().homes_of(name) for sheet in home_sheets(context(), page))
        sorts |= {sheet.what: sheet for sheet in (*book_sheets(context(), book, name), *of_homes)}
    for what, sheet in sorts.items():
        (folder / f"{what}.pdf").write_bytes(set_in_type(copy_of(sheet)).pdf)
    assert {"plan", "answers", "half-page", "story-booklet"} <= set(sorts)
    return sorted(folder.iterdir())


def test_one_of_each_sort_keeps_every_rule_of_pdf_ua(tmp_path: Path) -> None:
    try:
        assert faults_of(write_one_of_each_sort(tmp_path)) == []
    except NotToBeHad as why:
        pytest.fail(f"PDF/UA was not checked: {why}", pytrace=False)
