"""Print sheets of every sort and kind against PDF/UA-1 (ISO 14289-1:2014), as veraPDF reads it; without it, this fails."""

from __future__ import annotations

import io
import re
from pathlib import Path

import pikepdf
import pytest
from outside.verapdf import NotToBeHad, faults_of
from render.sheets_made import Made, every_sheet, whole_sets

FAULTS = ("no-language", "no-title", "no-description")
SPOILED = "spoiled-"


def checked(files: list[Path]) -> list[str]:
    try:
        return faults_of(files)
    except NotToBeHad as why:
        pytest.fail(f"PDF/UA was not checked: {why}", pytrace=False)


def one_of_each() -> list[Made]:
    """Of the frozen collection's sheets one of each sort; of those around each kind's example, and of the mats, every one."""
    sorts: dict[str, Made] = {}
    for sheet in every_sheet():
        sorts.setdefault(sheet.data.what if sheet.name.endswith(".pdf") else f"{sheet.name} {len(sorts)}", sheet)
    return list(sorts.values())


def write_sheets(folder: Path) -> list[Path]:
    """All that is to be read, in files: the sheets, and sheets that were spoiled."""
    files = {f"{number}-{sheet.name}": sheet.pdf for number, sheet in enumerate((*one_of_each(), *whole_sets()))}
    good = next(sheet for sheet in every_sheet() if sheet.data.what == "cast-cards")
    spoiled = {f"{SPOILED}{fault}": _spoiled(good.pdf, fault) for fault in FAULTS}
    assert len(files) > 90
    for name, content in {**files, **spoiled}.items():
        Path(folder, f"{re.sub('[^a-z0-9-]', '_', name)}.pdf").write_bytes(content)
    return sorted(folder.iterdir())


@pytest.fixture(scope="module")
def sheets(tmp_path_factory: pytest.TempPathFactory) -> list[Path]:
    return write_sheets(tmp_path_factory.mktemp("sheets"))


def test_every_sheet_keeps_every_rule(sheets: list[Path]) -> None:
    assert checked([sheet for sheet in sheets if not sheet.name.startswith(SPOILED)]) == []


def test_faults_are_found(sheets: list[Path]) -> None:
    """A check that finds nothing wrong has to show that it would."""
    lines = checked([sheet for sheet in sheets if sheet.name.startswith(SPOILED)])
    assert {line.partition(".pdf")[0].rpartition(f"/{SPOILED}")[2] for line in lines} == set(FAULTS)


def _spoiled(sheet: bytes, fault: str) -> bytes:
    """A sheet with a fault put into it, the same bytes each time."""
    out = io.BytesIO()
    with pikepdf.open(io.BytesIO(sheet)) as pdf:
        _spoil(pdf, fault)
        pdf.save(out, deterministic_id=True, compress_streams=False)  # no machine's own zlib
    return out.getvalue()


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
