"""The geometry of print sheets, measured on the PDFs: the page, every card, and no text clipped or overlapping."""

from __future__ import annotations

import io
from collections.abc import Iterator
from dataclasses import replace
from itertools import islice, pairwise

import pdfplumber
import pypdfium2 as pdfium
import pytest
from project import collection
from render.ink import Box, letters_on, lines_on
from render.sheets_made import Made, every_sheet, made, sheet_context, whole_sets
from storymaths.render.sheets.half_page import half_page

MM = 72 / 25.4
NEAREST_TO_EDGE = 4.0
"""Millimetres from the edge of the paper that any printer reaches."""
BAND = 15.0
"""Points: about a line of text."""


def test_every_page_is_a4_upright() -> None:
    for sheet in (*every_sheet(), *whole_sets()):
        for page in pdfium.PdfDocument(sheet.pdf):
            assert page.get_size() == pytest.approx((210 * MM, 297 * MM), abs=0.1), sheet.name


def test_no_text_runs_off_the_paper_and_none_lies_on_another() -> None:
    faults = []
    for sheet in every_sheet():
        for number, letters in enumerate(letters_on(sheet.pdf), 1):
            faults += [f"{sheet.name} page {number}: {fault}" for fault in (*_off(letters), *_on_another(letters))]
    assert faults == []


def _off(letters: list[tuple[str, Box]]) -> Iterator[str]:
    edge, wide, high = NEAREST_TO_EDGE * MM, 210 * MM, 297 * MM
    for letter, (left, bottom, right, top) in letters:
        if left < edge or bottom < edge or right > wide - edge or top > high - edge:
            yield f"“{letter}” is {min(left, bottom, wide - right, high - top) / MM:.1f} mm from the edge"


def _on_another(letters: list[tuple[str, Box]]) -> Iterator[str]:
    """Letters whose ink overlaps by more than kerning explains; each is held to those of the bands it reaches into."""
    bands: dict[int, list[tuple[int, str, Box]]] = {}
    for index, (letter, box) in sorted(enumerate(letters), key=lambda one: one[1][1][0]):
        for band in range(int(box[1] // BAND), int(box[3] // BAND) + 1):
            bands.setdefault(band, []).append((index, letter, box))
    for band in bands.values():
        for place, (index, letter, box) in enumerate(band):
            for another, other, its in islice(band, place + 1, None):
                if its[0] >= box[2]:
                    break
                if abs(index - another) > 2 and _overlap(box, its):  # two or three letters drawn as one, such as fi
                    yield f"“{letter}” and “{other}” overlap"


def _overlap(box: Box, its: Box) -> bool:
    across, up = min(box[2], its[2]) - its[0], min(box[3], its[3]) - max(box[1], its[1])
    smaller = min((one[2] - one[0]) * (one[3] - one[1]) for one in (box, its))
    return across > 0 and up > 0 and across * up > 0.35 * smaller and across * up > 1


def parts_on_pages(sheet: Made, layout: str) -> Iterator[tuple[int, list[int], int, int]]:
    """For each page of cards: its number, a card's sides in mm, cards across, and cards on it."""
    number = 0
    for part in sheet.data.parts:
        if part.layout != layout:
            continue
        count = len(part.data["cards"]) if layout == "cards" else part.data["copies"]
        across = part.data.get("across", 1)
        full = across * part.data.get("down", count)
        for start in range(0, count, full):
            yield number, part.data["card"], across, min(full, count - start)
            number += 1


@pytest.mark.parametrize("layout", ["cards", "exit_slips"])
def test_every_card_is_the_size_it_claims_and_every_cut_is_drawn_once(layout: str) -> None:
    measured = 0
    for sheet in every_sheet():
        if sheet.data.parts[0].layout != layout:
            continue
        drawn = lines_on(sheet.pdf)
        for number, (wide, high), across, count in parts_on_pages(sheet, layout):
            cuts = [line for line in drawn[number] if line.dash == (3, 3)]
            assert len(cuts) == len({tuple(round(side) for side in cut[:4]) for cut in cuts}), "a cut drawn twice"
            columns = sorted({round(cut.x0, 1) for cut in cuts if cut.wide < 1})
            rows = sorted({round(cut.top, 1) for cut in cuts if cut.high < 1})
            assert len(columns) == min(count, across) + 1, sheet.name
            assert len(rows) == -(-count // across) + 1, sheet.name
            for left, right in pairwise(columns):
                assert (right - left) / MM == pytest.approx(wide, abs=0.2), sheet.name
            for above, below in pairwise(rows):
                assert (below - above) / MM == pytest.approx(high, abs=0.2), sheet.name
            measured += count
    assert measured > (40 if layout == "exit_slips" else 300), measured


def test_what_stands_on_a_card_stays_inside_it() -> None:
    for sheet in every_sheet():
        if sheet.data.parts[0].layout != "cards":
            continue
        written = letters_on(sheet.pdf)
        for number, (wide, high), _, _ in parts_on_pages(sheet, "cards"):
            for letter, (left, bottom, right, top) in written[number]:
                column, row = (left / MM - 15) / wide, (297 - top / MM - 20) / high
                if row < 0 or bottom / MM < 16:
                    continue  # the title and the foot
                assert int(column) == int((right / MM - 15) / wide), f"{sheet.name}: “{letter}” crosses a cut"
                assert int(row) == int((297 - bottom / MM - 20) / high), f"{sheet.name}: “{letter}” crosses a cut"


def test_the_line_to_measure_is_50_mm_long() -> None:
    for sheet in every_sheet():
        if sheet.data.parts[0].layout in ("cards", "mats", "exit_slips"):
            low = [line.wide / MM for line in lines_on(sheet.pdf)[0] if line.top > 281 * MM and not line.dash]
            assert low == [pytest.approx(50, abs=0.2)], sheet.name


def test_a_plan_is_one_sheet_and_a_recording_sheet_no_more_than_two_a_version() -> None:
    for sheet in every_sheet():
        pages = len(pdfium.PdfDocument(sheet.pdf))
        if sheet.data.what == "plan":
            assert pages <= 2, sheet.name
        if sheet.data.what == "half-page":
            assert pages == 2, f"{sheet.name}: what to do on one side, help and answers on the other"
        if sheet.data.what == "exit-question":
            assert pages == 1, sheet.name
        if sheet.data.what == "recording-sheet":
            assert pages <= 2 * len(sheet.data.parts), sheet.name


def test_what_is_for_the_grown_up_is_read_on_the_back() -> None:
    """On their heads stand the answers alone: a caution is read before the two begin."""
    home = collection().homes_of("cliff-house-lift")[0]
    with pdfplumber.open(io.BytesIO(made(half_page(sheet_context(), home)).pdf)) as pdf:
        upright = pdf.pages[1].filter(lambda one: one["object_type"] != "char" or one["matrix"][0] > 0)
        words = " ".join(upright.extract_text().split())
    assert "For the adult:" in words
    assert "Answers:" not in words


def test_a_child_who_does_not_write_yet_has_room_to_draw_at_home() -> None:
    home = collection().homes_of("cliff-house-lift")[0]
    for year, ruled in ((1, True), (0, False)):
        sheet = half_page(sheet_context(), replace(home, fields=home.fields.model_copy(update={"year": year})))
        with pdfplumber.open(io.BytesIO(made(sheet).pdf)) as pdf:
            drawn = (*pdf.pages[0].lines, *pdf.pages[0].curves, *pdf.pages[0].rects)
        wide = [one for one in drawn if 70 * MM < one["x1"] - one["x0"] < 140 * MM]
        assert any(one["bottom"] - one["top"] < 2 for one in wide) == ruled
        assert any(one["bottom"] - one["top"] > 15 * MM for one in wide) != ruled
