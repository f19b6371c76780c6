"""What a screen reader finds in print sheets, read from the PDFs: title, language, headings, table heads, descriptions."""

from __future__ import annotations

import io
from collections import Counter
from collections.abc import Iterator
from itertools import pairwise
from typing import Any

import pikepdf
from render.sheets_made import every_sheet, whole_sets
from storymaths.render.quotes import curl


def elements_of(pdf: pikepdf.Pdf) -> Iterator[tuple[str, Any]]:
    """Every structure element in reading order, by its type."""
    waiting = [pdf.Root.StructTreeRoot.K]
    while waiting:
        node = waiting.pop(0)
        if isinstance(node, pikepdf.Array):
            waiting = [*node, *waiting]
        elif isinstance(node, pikepdf.Dictionary) and "/S" in node:
            yield str(node.S), node
            waiting = [*([node.K] if "/K" in node else []), *waiting]


def test_title_language_and_marks_of_a_tagged_file() -> None:
    for sheet in (*every_sheet(), *whole_sets()):
        with pikepdf.open(io.BytesIO(sheet.pdf)) as pdf:
            assert pdf.Root.MarkInfo.Marked, sheet.name
            assert str(pdf.Root.Lang) == "en-GB", sheet.name
            assert pdf.Root.ViewerPreferences.DisplayDocTitle, sheet.name
            with pdf.open_metadata() as about:
                assert about["dc:title"] == curl(sheet.data.title), sheet.name
                assert about["pdfuaid:part"] == "1", sheet.name
            assert "/CreationDate" not in pdf.docinfo, "a date would make other bytes every time"


def test_headings_begin_with_the_title_and_leave_no_level_out() -> None:
    for sheet in every_sheet():
        with pikepdf.open(io.BytesIO(sheet.pdf)) as pdf:
            levels = [int(kind[2:]) for kind, _ in elements_of(pdf) if kind[:2] == "/H" and kind[2:].isdigit()]
        assert levels[:1] == [1], sheet.name
        assert all(after <= before + 1 for before, after in pairwise(levels)), sheet.name


def test_every_table_has_heads_and_every_figure_a_description() -> None:
    kinds: Counter[str] = Counter()
    for sheet in every_sheet():
        with pikepdf.open(io.BytesIO(sheet.pdf)) as pdf:
            found = list(elements_of(pdf))
            kinds.update(kind for kind, _ in found)
            for kind, element in found:
                if kind == "/Figure":
                    assert str(element.get("/Alt", "")).strip(), f"{sheet.name}: a figure without a description"
            tables, heads = (sum(kind == wanted for kind, _ in found) for wanted in ("/Table", "/TH"))
            assert heads >= 2 * tables, f"{sheet.name}: {tables} tables, {heads} heads"
    assert min(kinds["/Figure"], kinds["/Table"], kinds["/LI"]) > 20


def test_what_is_on_a_page_twice_is_read_once() -> None:
    for sheet in every_sheet():
        if sheet.data.what in ("exit-question", "half-page"):
            with pikepdf.open(io.BytesIO(sheet.pdf)) as pdf:
                assert sum(kind == "/H1" for kind, _ in elements_of(pdf)) == 1, sheet.name
        if sheet.data.what == "cast-cards":
            with pikepdf.open(io.BytesIO(sheet.pdf)) as pdf:
                pictures = sum(kind == "/Figure" for kind, _ in elements_of(pdf))
            cards = [card for part in sheet.data.parts for card in part.data["cards"]]
            assert pictures == sum(bool(card["picture"]) and not card.get("again") for card in cards), sheet.name
