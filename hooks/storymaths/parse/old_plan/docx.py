"""An Office Open XML text (ISO/IEC 29500) as lines: changes not yet accepted as accepted, boxes and footnotes in their places."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from xml.etree.ElementTree import Element

from ...model.old_plans import OldPlanLimits
from .lines import PlanBlock, PlanLine, PlanTable, Unreadable
from .unpack import read_parts

_W = "{http://schemas.openxmlformats.org/wordprocessingml/2006/main}"
_FALLBACK = "{http://schemas.openxmlformats.org/markup-compatibility/2006}Fallback"
_OUTSIDE = (
    "word/header1.xml",
    "word/header2.xml",
    "word/header3.xml",
    "word/footer1.xml",
    "word/footer2.xml",
    "word/footer3.xml",
)


def read_docx(path: Path, limits: OldPlanLimits) -> list[PlanBlock]:
    """Its text, footnotes at the end of the paragraph that has their mark, heads and feet of pages last. Raises ``Unreadable``."""
    names = ("word/document.xml", "word/footnotes.xml", "word/endnotes.xml", *_OUTSIDE)
    document, feet, ends, *outside = read_parts(path, names, limits)
    body = document.find(f"{_W}body") if document is not None else None
    if body is None:
        raise Unreadable("There is no text in it. Is it a word processor's file?")
    reader = _Reader({f"{_W}footnoteReference": _notes(feet), f"{_W}endnoteReference": _notes(ends)})
    return [block for part in (body, *outside) if part is not None for block in reader.blocks(part)]


def _notes(part: Element | None) -> dict[str, Element]:
    return {} if part is None else {note.get(f"{_W}id", ""): note for note in part}


class _Reader:
    def __init__(self, notes: dict[str, dict[str, Element]]) -> None:
        self._notes = notes

    def blocks(self, parent: Element) -> Iterator[PlanBlock]:
        for one in parent:
            if one.tag == f"{_W}p":
                yield from self._lines(one)
            elif one.tag == f"{_W}tbl":
                yield PlanTable(tuple(tuple(self._cells(row)) for row in one.iter(f"{_W}tr") if row in _rows(one)))
            elif one.tag not in (f"{_W}del", f"{_W}moveFrom"):
                yield from self.blocks(one)

    def _cells(self, row: Element) -> Iterator[tuple[PlanLine, ...]]:
        for cell in row.iter(f"{_W}tc"):
            if cell in _inner(row, f"{_W}tc"):
                yield tuple(line for block in self.blocks(cell) for line in lines_of(block))

    def _lines(self, paragraph: Element) -> Iterator[PlanLine]:
        style = paragraph.find(f"{_W}pPr/{_W}pStyle")
        name = style.get(f"{_W}val", "") if style is not None else ""
        numbered = paragraph.find(f"{_W}pPr/{_W}numPr") is not None or name.startswith("List")
        heading = name.startswith(("Heading", "Title")) or name in ("berschrift1",)
        depth = (int(name[-1]) if name[-1:].isdigit() else 1) if numbered else 0
        boxes: list[PlanLine] = []
        text, bold = "", True
        for words, is_bold in self._words(paragraph, boxes):
            text += words
            bold = bold and (is_bold or not words.strip())
        for at, line in enumerate(text.split("\n")):
            if words := " ".join(line.split(" ")).strip():
                yield PlanLine(words, heading, bold, depth if not at else 0, name.startswith("ListNumber"))
        yield from boxes

    def _words(self, parent: Element, boxes: list[PlanLine], bold: bool = False) -> Iterator[tuple[str, bool]]:
        for one in parent:
            if one.tag in (_FALLBACK, f"{_W}del", f"{_W}moveFrom"):
                continue
            if one.tag == f"{_W}t":
                yield one.text or "", bold
            elif one.tag == f"{_W}tab":
                yield "\t", bold
            elif one.tag in (f"{_W}br", f"{_W}cr"):
                yield "\n", bold
            elif one.tag == f"{_W}noBreakHyphen":
                yield "-", bold
            elif one.tag == f"{_W}txbxContent":
                boxes += [line for block in self.blocks(one) for line in lines_of(block)]
            elif one.tag in self._notes:
                note = self._notes[one.tag].get(one.get(f"{_W}id", ""))
                inner = [] if note is None else [line.text for block in self.blocks(note) for line in lines_of(block)]
                yield (f" ({' '.join(inner)})" if inner else ""), bold
            elif one.tag != f"{_W}pPr":
                yield from self._words(one, boxes, bold or one.find(f"{_W}rPr/{_W}b") is not None)


def _inner(parent: Element, tag: str) -> list[Element]:
    """Elements of a kind within, but not within each other: markers of content may stand between."""
    found: list[Element] = []
    for one in parent:
        found += [one] if one.tag == tag else [] if one.tag == f"{_W}tbl" else _inner(one, tag)
    return found


def _rows(table: Element) -> list[Element]:
    return _inner(table, f"{_W}tr")


def lines_of(block: PlanBlock) -> tuple[PlanLine, ...]:
    """A line as it is; a table's lines cell by cell."""
    return (
        (block,) if isinstance(block, PlanLine) else tuple(line for row in block.rows for cell in row for line in cell)
    )
