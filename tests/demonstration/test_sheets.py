"""A print sheet of every sort that the demonstration has, read by veraPDF."""

from __future__ import annotations

from pathlib import Path

import pytest
from outside.verapdf import NotToBeHad, faults_of
from project import ROOT
from storymaths.activities.on_pages import activities_of
from storymaths.render.sheets.of_page import book_sheets, home_sheets, session_sheets
from storymaths.render.sheets.sheet import SheetData
from storymaths.render.sheets.sheet_context import SheetContext
from storymaths.render.sheets.typesetting import copy_of, set_in_type

from .demonstration import demonstration


def read(source: str) -> str | None:
    file = ROOT / "content" / source
    return file.read_text(encoding="utf-8") if file.is_file() else None


def test_one_of_each_sort_keeps_every_rule_of_pdf_ua(tmp_path: Path) -> None:
    whole, sheets = demonstration(), dict[str, SheetData]()
    context = SheetContext(whole, lambda page: activities_of(page, whole), read)
    for name, book in whole.books.items():
        made = (
            *book_sheets(context, book, name),
            *(sheet for page in whole.sessions_of(name) for sheet in session_sheets(context, page)),
            *(sheet for page in whole.homes_of(name) for sheet in home_sheets(context, page)),
        )
        sheets = {sheet.what: sheet for sheet in made} | sheets
    for what, sheet in sheets.items():
        (tmp_path / f"{what}.pdf").write_bytes(set_in_type(copy_of(sheet)).pdf)
    assert {"plan", "answers", "half-page", "story-booklet"} <= set(sheets)
    try:
        assert faults_of(sorted(tmp_path.iterdir())) == []
    except NotToBeHad as why:
        pytest.fail(f"PDF/UA was not checked: {why}", pytrace=False)
