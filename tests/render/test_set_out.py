"""What is set out for the week, on its cards; and what a year that writes nothing is not given."""

from __future__ import annotations

from dataclasses import replace

from project import collection
from render.sheets_made import sheet_context
from storymaths.render.sheets.of_page import session_sheets


def test_a_card_for_each_area_two_to_a_page() -> None:
    page = collection().sessions_of("ferry-fare")[0]
    (sheet,) = (one for one in session_sheets(sheet_context(), page) if one.what == "set-out")
    cards = sheet.parts[0].data["cards"]
    assert [card["area"] for card in cards] == ["Small world", "Song and rhyme"]
    assert [len(card["say"]) for card in cards] == [2, 1]


def test_a_year_that_writes_nothing_has_no_sheet_to_write_on() -> None:
    page = collection().sessions_of("ferry-fare")[0]
    writing = {"recording-sheet", "exit-question"}
    assert writing <= {one.what for one in session_sheets(sheet_context(), page)}
    fields = page.fields.model_copy(update={"year": 0, "materials": (), "bends": {}})
    made = session_sheets(sheet_context(), replace(page, fields=fields))
    assert not writing & {one.what for one in made}
