"""Sets a sheet on A4: plain data in, the bytes of a tagged PDF and a picture of its first page out. Writes no file.

The data reaches the templates as data, never as source; what an author types cannot become code.
"""

from __future__ import annotations

import json
from functools import cache
from hashlib import sha256
from importlib.metadata import version
from pathlib import Path
from typing import NamedTuple

import typst

from .letters import edition, printable, typefaces
from .preview import PIXELS_AN_INCH, made_small
from .sheet import House, SheetData

_TEMPLATES = Path(__file__).parent
_MAIN = "sheet.typ"
_NOTHING_DRAWN = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 1 1"/>'


class Printed(NamedTuple):
    """A sheet made: PDF/UA-1 without a date, so that the same sheet gives the same bytes, and its first page as a picture."""

    pdf: bytes
    png: bytes


@cache
def _compiler() -> typst.Compiler:
    return typst.Compiler(
        input=str(_TEMPLATES / _MAIN), root=str(_TEMPLATES), font_paths=typefaces(), ignore_system_fonts=True
    )


@cache
def _made_with() -> bytes:
    """Names everything besides the data that decides what a sheet looks like."""
    sources = [path.read_bytes() for path in sorted(_TEMPLATES.glob("*.typ"))]
    return sha256(b"\0".join([version("typst").encode(), edition().encode(), *sources])).digest()


def copy_of(sheet: SheetData, house: House = House()) -> str:  # noqa: B008 - frozen
    """What is set: the sheet's data as text, without signs that no typeface has."""
    return printable(sheet.as_json(house))


def content_key(copy: str) -> str:
    """The same for two sheets if they come out the same."""
    return sha256(_made_with() + copy.encode()).hexdigest()


def set_in_type(copy: str) -> Printed:
    """The sheet made. One whose drawings the typesetter cannot read is made without them."""
    try:
        return _set(copy)
    except typst.TypstError:
        sheet = json.loads(copy)
        if not sheet["pictures"]:
            raise
        sheet["pictures"] = dict.fromkeys(sheet["pictures"], _NOTHING_DRAWN)
        return _set(json.dumps(sheet, ensure_ascii=False))


def _set(copy: str) -> Printed:
    pdf = _compiler().compile(format="pdf", pdf_standards=["ua-1"], sys_inputs={"data": copy})
    pages = _compiler().compile(format="png", ppi=PIXELS_AN_INCH, sys_inputs={"data": _beginning(copy)})
    first = pages[0] if isinstance(pages, list) else pages
    if not isinstance(pdf, bytes) or not isinstance(first, bytes):
        raise TypeError("the typesetter gave no bytes")
    return Printed(pdf, made_small(first))


def _beginning(copy: str) -> str:
    """As much of a sheet as its first page needs: drawing all the pages of a long one takes longer than setting it."""
    sheet = json.loads(copy)
    if len(sheet["parts"]) == 1:
        return copy
    return json.dumps({**sheet, "parts": sheet["parts"][:1]}, ensure_ascii=False)


def pages_in(pdf: bytes) -> int:
    """How many pages a sheet made here has."""
    return pdf.count(b"/Type/Page") - pdf.count(b"/Type/Pages")
