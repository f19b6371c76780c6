"""Writes the parts of a page as an Office Open XML document (ISO/IEC 29500), the same bytes for the same parts."""

from __future__ import annotations

import io
import zipfile
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime
from functools import cache

from docx import Document
from docx.document import Document as Docx
from docx.enum.style import WD_STYLE_TYPE
from docx.oxml import OxmlElement
from docx.oxml.ns import qn
from docx.oxml.xmlchemy import BaseOxmlElement
from docx.shared import Length, Mm
from docx.text.paragraph import Paragraph as DocxParagraph

from .parts import Line, Paragraph, Part, Parts, Picture, Table

_NO_TIME = datetime(1980, 1, 1, tzinfo=UTC)
"""The first day a zip can tell: a file is no newer for having been made again."""
_UNUSED = ("stylesWithEffects.xml", "thumbnail.jpeg", "item1.xml")
_DEEPEST = 3
"""Of lists: word processors have built-in styles for three depths."""
_WIDEST = Mm(120)


@dataclass(frozen=True, slots=True)
class About:
    """What a document says of itself."""

    title: str
    author: str
    language: str
    """As BCP 47 has it: ``en-GB``."""
    foot: str
    """Who publishes it, and what may be done with it."""


def write_document(parts: Parts, about: About, pictures: Mapping[str, bytes]) -> bytes:
    """The document; ``pictures`` are PNGs by their alternative texts, and one not among them is told in words."""
    document = Document(io.BytesIO(_blank()))
    _describe(document, about)
    numbers: dict[int, int] = {}
    _write(document, parts.told, pictures, numbers)
    if parts.answers:
        document.add_heading("Answers", 1).paragraph_format.page_break_before = True
        _write(document, parts.answers, pictures, numbers)
    return _bytes_of(document)


def _describe(document: Docx, about: About) -> None:
    of = document.core_properties
    of.title, of.author, of.language = about.title, about.author, about.language
    of.comments, of.created, of.modified, of.last_modified_by = about.foot, _NO_TIME, _NO_TIME, about.author
    for language in document.styles.element.iter(qn("w:lang")):
        language.set(qn("w:val"), about.language)
    section = document.sections[0]
    section.page_width, section.page_height = Mm(210), Mm(297)
    section.left_margin = section.right_margin = section.top_margin = section.bottom_margin = Mm(20)
    section.footer.paragraphs[0].text = about.foot


@cache
def _blank() -> bytes:
    """The library's empty document, without what nothing here uses: nine tenths of its bytes."""
    document = Document()
    for style in list(document.styles):
        if style.type == WD_STYLE_TYPE.TABLE and style.name not in ("Normal Table", "Table Grid"):
            style.delete()
    for part in (document.part, document.part.package):
        for name, related in list(part.rels.items()):
            if not related.is_external and related.target_part.partname.endswith(_UNUSED):
                del part.rels[name]
    out = io.BytesIO()
    document.save(out)
    return out.getvalue()


def _write(document: Docx, parts: Sequence[Part], pictures: Mapping[str, bytes], numbers: dict[int, int]) -> None:
    for part in parts:
        match part:
            case Paragraph():
                _write_paragraph(document, part, numbers)
            case Table():
                _write_table(document, part)
            case Picture(alt):
                _write_picture(document, alt, pictures.get(alt))


def _write_paragraph(document: Docx, part: Paragraph, numbers: dict[int, int]) -> None:
    paragraph = document.add_paragraph()
    # By its id: looked up by name, as the library does, a style takes longer than all the rest of its paragraph.
    paragraph._p.style = _style(part).replace(" ", "")
    _fill(paragraph, part.line)
    if part.item and part.list_number:
        # Each list counts from 1: a numbering of its own, on the same abstract one as the style's.
        number = numbers.setdefault(part.list_number, 0) or _new_numbering(document, _style(part))
        numbers[part.list_number] = number
        properties = paragraph._p.get_or_add_pPr().get_or_add_numPr()
        properties.get_or_add_ilvl().val = 0
        properties.get_or_add_numId().val = number


def _style(part: Paragraph) -> str:
    if part.heading:
        return f"Heading {part.heading}"
    if not part.depth:
        return "Normal"
    name = "List Continue" if not part.item else "List Number" if part.list_number else "List Bullet"
    depth = min(part.depth, _DEEPEST)
    return name if depth == 1 else f"{name} {depth}"


def _new_numbering(document: Docx, style: str) -> int:
    numbering = document.part.numbering_part.element
    used = document.styles[style].element.pPr.numPr.numId.val
    made: BaseOxmlElement = numbering.add_num(numbering.num_having_numId(used).abstractNumId.val)
    made.add_lvlOverride(ilvl=0).add_startOverride(1)
    return int(made.numId)


def _fill(paragraph: DocxParagraph, line: Line) -> None:
    for words in line:
        run = paragraph.add_run(words.text)
        # Left to the style where it is not asked for: False would take a heading's own bold away.
        run.bold, run.italic = words.bold or None, words.italic or None


def _write_table(document: Docx, part: Table) -> None:
    if part.caption:
        document.add_paragraph(part.caption, style="Caption").paragraph_format.keep_with_next = True
    columns = max(map(len, part.rows), default=0)
    if not columns:
        return
    table = document.add_table(len(part.rows), columns, style="Table Grid")
    for row, cells in zip(table.rows, part.rows, strict=True):
        for cell, line in zip(row.cells, cells, strict=False):
            _fill(cell.paragraphs[0], line)
    for row in table.rows[: part.head] if part.head else ():
        row._tr.get_or_add_trPr().append(OxmlElement("w:tblHeader"))
    document.add_paragraph()


def _write_picture(document: Docx, alt: str, png: bytes | None) -> None:
    if png is None:
        document.add_paragraph().add_run(f"[Picture: {alt}]").italic = True
        return
    shape = document.add_picture(io.BytesIO(png))
    size = min(1, _WIDEST / shape.width)
    shape.width, shape.height = Length(int(shape.width * size)), Length(int(shape.height * size))
    shape._inline.docPr.set("descr", alt)


def _bytes_of(document: Docx) -> bytes:
    """The file, stored and not pressed, with a fixed time: the same bytes wherever it is written."""
    written, out = io.BytesIO(), io.BytesIO()
    document.save(written)
    with zipfile.ZipFile(written) as made, zipfile.ZipFile(out, "w", zipfile.ZIP_STORED) as kept:
        for name in made.namelist():
            entry = zipfile.ZipInfo(name, _NO_TIME.timetuple()[:6])
            entry.create_system = 3
            kept.writestr(entry, made.read(name))
    return out.getvalue()
