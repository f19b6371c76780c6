"""Every mat there is, whatever the collection uses: drawn to size, and called for by materials and by activities."""

from __future__ import annotations

import io
from itertools import pairwise

import pdfplumber
import pytest
from render.ink import lines_on
from render.sheets_made import (
    CARROLL,
    HOOP,
    THREE,
    Made,
    made,
    mat,
    needing,
    session_needing,
    session_with,
    sheet_context,
)
from render.test_sheets_bad_input import faults_of
from render.test_sheets_on_paper import MM
from storymaths.render.sheets.mat_kinds import FROM_MATERIAL
from storymaths.render.sheets.mats import session_mats


def mats_for(activity: str) -> dict[str, Made]:
    """The mats an activity is done on."""
    page = needing(session_with(activity, "Each has a two-way\ntable. Two share the sorting rings."), "pencil")
    return {data.what: made(data) for data in session_mats(sheet_context(), page, sheet_context().activities(page))}


@pytest.mark.parametrize("item", FROM_MATERIAL)
@pytest.mark.parametrize("year", [0, 2, 6])
def test_every_mat_can_be_printed(item: str, year: int) -> None:
    assert faults_of(mat(item, year=year)) == []


def rules_of(sheet: Made, upright: bool) -> list[float]:
    """Where the long lines of a mat stand, in millimetres from the left or the top."""
    lines = [line for line in lines_on(sheet.pdf)[0] if not line.dash and line.top < 281 * MM]
    if upright:
        return sorted({round(line.x0 / MM, 2) for line in lines if line.high > 150 * MM})
    return sorted({round(line.top / MM, 2) for line in lines if line.wide > 100 * MM})


@pytest.mark.parametrize(
    ("note", "year", "side"),
    [("Squares of 2 cm", 4, 20), ("", 4, 10), ("", 1, 20), ("With squares of a centimetre", 1, 10)],
)
def test_squares_are_as_large_as_they_say(note: str, year: int, side: int) -> None:
    sheet = mat("squared-paper", note, year)
    for upright in (True, False):
        gaps = [after - before for before, after in pairwise(rules_of(sheet, upright))]
        assert gaps == [pytest.approx(side, abs=0.2)] * len(gaps)
        assert len(gaps) > 8


def test_a_number_line_reaches_as_far_as_the_note_says() -> None:
    lines = lines_on(mat("number-line", "0 to 30").pdf)[0]
    ticks = sorted({round(line.top / MM, 1) for line in lines if 7 * MM < line.wide < 13 * MM})
    assert len(ticks) == 31
    assert ticks[-1] - ticks[0] == pytest.approx(250, abs=0.2)


def test_headings_of_rings_and_tables_are_those_of_the_activity() -> None:
    (table,) = mats_for(CARROLL).values()
    with pdfplumber.open(io.BytesIO(table.pdf)) as pdf:
        text = pdf.pages[0].extract_text()
    assert table.data.what == "two-way-table"
    for heading in ("can fly", "cannot fly", "more than", "or fewer"):
        assert heading in text
    assert list(mats_for(HOOP)) == ["sorting-ring"]
    (three,) = mats_for(THREE).values()
    with pdfplumber.open(io.BytesIO(three.pdf)) as pdf:
        rings = [curve for curve in pdf.pages[0].curves if curve["width"] > 100 * MM]
        text = pdf.pages[0].extract_text()
    assert len(rings) == 3
    assert all(heading in text for heading in ("odd", "more than 4", "counting in 5s"))


def test_a_material_and_an_activity_that_want_the_same_mat_share_it() -> None:
    page = session_needing("balance-mat")
    activity = "kind: balance\ntitle: Level\ncast: {a: {mass: 1}, b: {mass: 2}, c: {mass: 3}}\n"
    sheets = session_mats(sheet_context(), page, sheet_context().activities(session_with(activity)))
    assert [sheet.what for sheet in sheets] == ["balance-mat"]
