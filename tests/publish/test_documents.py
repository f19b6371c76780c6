"""A page as a document for a word processor: the same words in the same order, as the open standard has them.

What is expected of the file is from ECMA-376 part 1: w:tblHeader (17.4.78), heading styles (17.3.1.27), the drawing's
``descr`` (20.4.2.5), w:lang (17.3.2.20), core properties (part 2, 11).
"""

from __future__ import annotations

import io
import re
import zipfile
from collections import Counter
from dataclasses import replace
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from docx import Document
from docx.document import Document as Docx
from docx.oxml.ns import qn
from lxml import etree, html
from project import PROJECT
from storymaths.pipeline import start_build
from storymaths.publish.documents import write_documents
from storymaths.publish.page_kinds.table import kind_of
from storymaths.render.site import Print, Rendered

_WORD = re.compile(r"[^\W_]+")
_NOT_TOLD = (
    "//nav|//svg|//*[@aria-hidden='true']|//*[contains(@class,'to-print') or contains(@class,'answers-apart') or "
    "contains(@class,'masthead-cover') or contains(@class,'button')]"
)


@cache
def _made() -> tuple[dict[str, bytes], dict[str, str]]:
    """The documents of a session and a home activity, and their pages."""
    build = start_build(PROJECT)
    site = build.site
    assert site is not None
    pages = {page.source: page for page in site.collection.documents}
    one = {name: next(source for source in sorted(pages) if f"/{name}-1" in source) for name in ("session", "home")}
    drawn = {source: kind_of(pages[source]).draw(site, pages[source]) for source in one.values()}
    other = Rendered("", "", "", "<p>left alone</p>", "")
    with TemporaryDirectory() as folder:
        out = Path(folder)
        write_documents(site, lambda source: drawn.get(source, other), out, out / "kept")
        files = {name: (out / f"{source[:-3]}.docx").read_bytes() for name, source in one.items()}
        write_documents(site, lambda source: drawn.get(source, other), out, out / "kept afresh")
        assert all((out / f"{source[:-3]}.docx").read_bytes() == files[name] for name, source in one.items())
    return files, {name: drawn[source].html for name, source in one.items()}


def _opened(name: str) -> Docx:
    return Document(io.BytesIO(_made()[0][name]))


def _words_of_document(name: str) -> list[str]:
    body = _opened(name).element.body
    paragraphs = ("".join(node.text or "" for node in one.iter(qn("w:t"))) for one in body.iter(qn("w:p")))
    return [word for line in paragraphs for word in _WORD.findall(line)]


@pytest.mark.parametrize("name", ["session", "home"])
def test_every_word_of_the_page_is_in_it(name: str) -> None:
    page = html.fromstring(f"<div>{_made()[1][name]}</div>")
    for node in page.xpath(_NOT_TOLD):
        tail, before = node.tail or "", node.getprevious()
        if before is not None:
            before.tail = f"{before.tail or ''} {tail}"
        else:
            node.getparent().text = f"{node.getparent().text or ''} {tail}"
        node.getparent().remove(node)
    told = _WORD.findall(" ".join(page.itertext()))
    assert not Counter(told) - Counter(_words_of_document(name))


@pytest.mark.parametrize("name", ["session", "home"])
def test_headings_tables_and_lists_are_real(name: str) -> None:
    document = _opened(name)
    styles = {paragraph.style.name for paragraph in document.paragraphs if paragraph.style}
    assert {"Heading 1", "Heading 2", "List Bullet", "List Number"} <= styles
    assert document.tables
    assert all(table.rows[0]._tr.xpath("./w:trPr/w:tblHeader") for table in document.tables)


def test_answers_come_last_on_a_page_of_their_own() -> None:
    headings = [one for one in _opened("session").paragraphs if one.style and one.style.name == "Heading 1"]
    assert headings[-1].text == "Answers"
    assert headings[-1].paragraph_format.page_break_before
    lines = [one.text for one in _opened("session").paragraphs]
    assert not [line for line in lines[: lines.index("Answers")] if re.match(r"For the adult: (all|both|the)\b", line)]


def test_pictures_have_their_words() -> None:
    shapes = list(_opened("session").inline_shapes)
    assert shapes
    assert all(shape._inline.docPr.get("descr") for shape in shapes)


@pytest.mark.parametrize("name", ["session", "home"])
def test_it_says_whose_it_is_and_nothing_of_when(name: str) -> None:
    document = _opened(name)
    of = document.core_properties
    assert of.title
    assert of.author
    assert of.language == "en-GB"
    assert document.sections[0].footer.paragraphs[0].text.startswith(f"{of.author} · ")
    languages = {node.get(qn("w:val")) for node in document.styles.element.iter(qn("w:lang"))}
    assert languages == {"en-GB"}
    assert of.created is not None
    assert of.created.year == 1980
    with zipfile.ZipFile(io.BytesIO(_made()[0][name])) as file:
        assert {entry.date_time for entry in file.infolist()} == {(1980, 1, 1, 0, 0, 0)}
        for entry in file.namelist():
            if entry.endswith((".xml", ".rels")):
                etree.fromstring(file.read(entry))


@pytest.mark.parametrize("name", ["session", "home"])
def test_its_page_leads_to_it(name: str) -> None:
    """Among what is to print, where there is any."""
    site = start_build(PROJECT).site
    assert site is not None
    page = next(page for page in site.collection.documents if f"/{name}-1" in page.source)
    sheet = Print("Plan", "It says.", "One.", 1, "plan.pdf", "plan.png")
    drawn = kind_of(page).draw(replace(site, prints={page.source: [sheet]}), page).html
    assert re.search(rf'<a href="{name}-1\.docx">To change: a document for a word processor</a>', drawn)
