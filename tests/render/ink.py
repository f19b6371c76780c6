"""What stands on a page of a PDF, as PDFium reads it: every letter and every straight line, with its place in points."""

from __future__ import annotations

from ctypes import byref, c_double, c_float
from functools import lru_cache
from typing import NamedTuple

import pypdfium2 as pdfium
import pypdfium2.raw as read

Box = tuple[float, float, float, float]
"""Left, bottom, right and top, from the lower left corner of the page."""
_A_LINE = 2
"""Where it begins, and where it leads."""


class Line(NamedTuple):
    """A straight line that is drawn; ``top`` and ``bottom`` count down from the top of the page."""

    x0: float
    top: float
    x1: float
    bottom: float
    dash: tuple[float, ...]

    @property
    def wide(self) -> float:
        return self.x1 - self.x0

    @property
    def high(self) -> float:
        return self.bottom - self.top


def letters_on(pdf: bytes) -> list[list[tuple[str, Box]]]:
    """Every letter of each page with the box of its ink."""
    return [_letters_of(page) for page in pdfium.PdfDocument(pdf)]


def _letters_of(page: pdfium.PdfPage) -> list[tuple[str, Box]]:
    text = page.get_textpage()
    left, right, bottom, top = (c_double() for _ in range(4))
    found = []
    for index in range(text.count_chars()):
        letter = chr(read.FPDFText_GetUnicode(text, index))
        if letter.strip() and letter not in ("\ufffe", "\x02"):  # a hyphen that PDFium adds or takes away
            read.FPDFText_GetCharBox(text, index, byref(left), byref(right), byref(bottom), byref(top))
            found.append((letter, (left.value, bottom.value, right.value, top.value)))
    return found


@lru_cache(maxsize=2000)
def lines_on(pdf: bytes) -> list[list[Line]]:
    """Every straight line that is drawn on each page, pictures on it left out."""
    return [_lines_of(page) for page in pdfium.PdfDocument(pdf)]


def _lines_of(page: pdfium.PdfPage) -> list[Line]:
    high, found = page.get_height(), []
    for one in page.get_objects(filter=[read.FPDF_PAGEOBJ_PATH]):
        if read.FPDFPath_CountSegments(one) == _A_LINE:
            (x0, y0), (x1, y1) = (_point(one, segment) for segment in range(_A_LINE))
            found.append(Line(min(x0, x1), high - max(y0, y1), max(x0, x1), high - min(y0, y1), _dash_of(one)))
    return found


def lowest_on(pdf: bytes, above: float) -> list[float]:
    """How far down each page what stands on it reaches, from the top; what ends below ``above`` left out, as its foot."""
    return [max(low for low in _lows_of(page) if low < above) for page in pdfium.PdfDocument(pdf)]


def _lows_of(page: pdfium.PdfPage) -> list[float]:
    high = page.get_height()
    return [high - one.get_bounds()[1] for one in page.get_objects(max_depth=1)]


def _point(path: pdfium.PdfObject, segment: int) -> tuple[float, float]:
    x, y = c_float(), c_float()
    read.FPDFPathSegment_GetPoint(read.FPDFPath_GetPathSegment(path, segment), byref(x), byref(y))
    place: tuple[float, float] = path.get_matrix().on_point(x.value, y.value)
    return place


def _dash_of(path: pdfium.PdfObject) -> tuple[float, ...]:
    count = read.FPDFPageObj_GetDashCount(path)
    lengths = (c_float * max(0, count))()
    read.FPDFPageObj_GetDashArray(path, lengths, count)
    return tuple(lengths)
