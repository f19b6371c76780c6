"""Writes the forms that old plans have as files a word processor makes."""

from __future__ import annotations

import io
import zipfile
from collections.abc import Sequence
from pathlib import Path

from docx import Document
from docx.document import Document as Docx
from docx.oxml import parse_xml
from docx.oxml.ns import nsdecls
from docx.table import Table
from PIL import Image

ODT = "urn:oasis:names:tc:opendocument:xmlns:"
_ODT_HEAD = (
    f'<?xml version="1.0" encoding="UTF-8"?><office:document-content xmlns:office="{ODT}office:1.0" '
    f'xmlns:text="{ODT}text:1.0" xmlns:table="{ODT}table:1.0" office:version="1.3"><office:body><office:text>'
)


def new() -> Docx:
    """An empty document."""
    return Document()


def bold(document: Docx, words: str) -> None:
    """A heading that is only bold."""
    document.add_paragraph().add_run(words).bold = True


def lines(document: Docx, *said: str, style: str | None = None) -> None:
    """Paragraphs of one style."""
    for one in said:
        document.add_paragraph(one, style=style)


def grid(document: Docx, rows: Sequence[Sequence[str]]) -> Table:
    """A table of these cells; a line break in a cell begins a paragraph."""
    table = document.add_table(len(rows), max(map(len, rows)))
    for at, row in enumerate(rows):
        for column, words in enumerate(row):
            first, *rest = words.split("\n")
            table.cell(at, column).text = first
            for more in rest:
                table.cell(at, column).add_paragraph(more)
    return table


def text_box(document: Docx, words: str) -> None:
    """A box of text that floats beside a paragraph, in the older form and the newer, as programs write both."""
    inner = f"<w:txbxContent><w:p><w:r><w:t>{words}</w:t></w:r></w:p></w:txbxContent>"
    run = parse_xml(
        f'<w:r {nsdecls("w")} xmlns:mc="http://schemas.openxmlformats.org/markup-compatibility/2006" '
        'xmlns:v="urn:schemas-microsoft-com:vml" xmlns:wps="http://schemas.microsoft.com/office/word/2010/wordprocessingShape">'
        f'<mc:AlternateContent><mc:Choice Requires="wps"><w:drawing><wps:txbx>{inner}</wps:txbx></w:drawing></mc:Choice>'
        f"<mc:Fallback><w:pict><v:textbox>{inner}</v:textbox></w:pict></mc:Fallback></mc:AlternateContent></w:r>"
    )
    document.add_paragraph()._p.append(run)


def tracked(document: Docx, kept: str, taken_out: str, put_in: str) -> None:
    """A paragraph with a change that nobody has accepted yet."""
    paragraph = document.add_paragraph(kept)
    paragraph._p.append(
        parse_xml(f'<w:del {nsdecls("w")} w:id="1"><w:r><w:delText>{taken_out}</w:delText></w:r></w:del>')
    )
    paragraph._p.append(parse_xml(f'<w:ins {nsdecls("w")} w:id="2"><w:r><w:t>{put_in}</w:t></w:r></w:ins>'))


def picture(document: Docx) -> None:
    """A photograph with no words."""
    out = io.BytesIO()
    Image.new("RGB", (8, 8), "red").save(out, "PNG")
    out.seek(0)
    document.add_picture(out)


def add_footnote(path: Path, words: str) -> None:
    """Puts a footnote into a written file, with its mark at the end of the last paragraph."""
    with zipfile.ZipFile(path) as before:
        parts = {name: before.read(name) for name in before.namelist()}
    space = 'xmlns:w="http://schemas.openxmlformats.org/wordprocessingml/2006/main"'
    note = f'<w:footnote w:id="2"><w:p><w:r><w:t>{words}</w:t></w:r></w:p></w:footnote>'
    parts["word/footnotes.xml"] = f"<w:footnotes {space}>{note}</w:footnotes>".encode()
    kind = "http://schemas.openxmlformats.org/officeDocument/2006/relationships/footnotes"
    _put(parts, "word/_rels/document.xml.rels", f'<Relationship Id="rIdNotes" Type="{kind}" Target="footnotes.xml"/>')
    kind = "application/vnd.openxmlformats-officedocument.wordprocessingml.footnotes+xml"
    _put(parts, "[Content_Types].xml", f'<Override PartName="/word/footnotes.xml" ContentType="{kind}"/>')
    body = parts["word/document.xml"].decode()
    at = body.rindex("</w:p>")
    parts["word/document.xml"] = f'{body[:at]}<w:r><w:footnoteReference w:id="2"/></w:r>{body[at:]}'.encode()
    write_zip(path, parts)


def _put(parts: dict[str, bytes], name: str, entry: str) -> None:
    """Puts an entry at the end of a list in a file."""
    before, closing = parts[name].decode().rsplit("</", 1)
    parts[name] = f"{before}{entry}</{closing}".encode()


def write_zip(path: Path, parts: dict[str, bytes]) -> None:
    """A file of these parts."""
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as out:
        for name, content in parts.items():
            out.writestr(name, content)


def write_odt(path: Path, body: str) -> None:
    """An OpenDocument text of this content."""
    content = f"{_ODT_HEAD}{body}</office:text></office:body></office:document-content>"
    mime = b"application/vnd.oasis.opendocument.text"
    write_zip(path, {"mimetype": mime, "content.xml": content.encode()})
