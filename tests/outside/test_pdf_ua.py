"""Every print sheet against PDF/UA-1 (ISO 14289-1:2014), as veraPDF reads it. Where it cannot be had, this fails."""

from __future__ import annotations

from pathlib import Path

import pikepdf
import pytest
from outside.verapdf import NotToBeHad, faults_of
from render.sheets_made import every_sheet, whole_sets


def checked(files: list[Path]) -> list[str]:
    try:
        return faults_of(files)
    except NotToBeHad as why:
        pytest.fail(f"PDF/UA was not checked: {why}", pytrace=False)


def test_every_sheet_keeps_every_rule(tmp_path: Path) -> None:
    files = []
    for number, sheet in enumerate((*every_sheet(), *whole_sets())):
        files.append(tmp_path / f"{number}-{sheet.name.replace('/', '_').replace(': ', '_')}.pdf")
        files[-1].write_bytes(sheet.pdf)
    assert len(files) > 100
    assert checked(files) == []


def test_faults_are_found(tmp_path: Path) -> None:
    """A check that finds nothing wrong has to show that it would."""
    good = next(sheet for sheet in every_sheet() if sheet.data.what == "cast-cards")
    (tmp_path / "good.pdf").write_bytes(good.pdf)
    for fault in ("no-language", "no-title", "no-description"):
        with pikepdf.open(tmp_path / "good.pdf") as pdf:
            _spoil(pdf, fault)
            pdf.save(tmp_path / f"{fault}.pdf")
    said = checked(sorted(tmp_path.glob("*.pdf")))
    assert {line.partition(".pdf")[0].rpartition("/")[2] for line in said} == {
        "no-title",
        "no-description",
        "no-language",
    }


def _spoil(pdf: pikepdf.Pdf, fault: str) -> None:
    if fault == "no-title":
        del pdf.Root.Metadata
    elif fault == "no-language":
        del pdf.Root.Lang
    for found in pdf.objects:
        if isinstance(found, pikepdf.Dictionary) and found.get("/S") == "/Figure" and fault == "no-description":
            del found.Alt
        if isinstance(found, pikepdf.Dictionary) and fault == "no-language" and "/Lang" in found:
            del found.Lang
