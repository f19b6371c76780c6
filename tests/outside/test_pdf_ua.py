"""Print sheets of every sort and kind against PDF/UA-1 (ISO 14289-1:2014), as veraPDF reads it; without it, this fails."""

from __future__ import annotations

import io
import re
import tempfile
from functools import lru_cache
from pathlib import Path

import pikepdf
import pytest
from outside.verapdf import NotToBeHad, faults_of
from render.sheets_made import Made, every_sheet, whole_sets

FAULTS = ("no-language", "no-title", "no-description")


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


@lru_cache(maxsize=1)
def said_of_all() -> tuple[list[str], list[str]]:
    """What is said of the sheets, and of sheets that were spoiled: read together, since starting to read costs most."""
    files = {f"{number}-{sheet.name}": sheet.pdf for number, sheet in enumerate((*one_of_each(), *whole_sets()))}
    good = next(sheet for sheet in every_sheet() if sheet.data.what == "cast-cards")
    spoiled = {f"spoiled-{fault}": _spoiled(good.pdf, fault) for fault in FAULTS}
    assert len(files) > 90
    with tempfile.TemporaryDirectory() as folder:
        for name, content in {**files, **spoiled}.items():
            Path(folder, f"{re.sub('[^a-z0-9-]', '_', name)}.pdf").write_bytes(content)
        lines = checked(sorted(Path(folder).iterdir()))
    return [line for line in lines if "/spoiled-" not in line], [line for line in lines if "/spoiled-" in line]


def test_every_sheet_keeps_every_rule() -> None:
    assert said_of_all()[0] == []


def test_faults_are_found() -> None:
    """A check that finds nothing wrong has to show that it would."""
    told = {line.partition(".pdf")[0].rpartition("/spoiled-")[2] for line in said_of_all()[1]}
    assert told == set(FAULTS)


def _spoiled(sheet: bytes, fault: str) -> bytes:
    """A sheet with a fault put into it, the same bytes each time."""
    out = io.BytesIO()
    with pikepdf.open(io.BytesIO(sheet)) as pdf:
        _spoil(pdf, fault)
        pdf.save(out, deterministic_id=True)
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
