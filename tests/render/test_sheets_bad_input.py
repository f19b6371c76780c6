"""Sheets from content nobody would write on purpose: each is a right sheet, and none a crash or a request."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pypdfium2 as pdfium
import pytest
from project import PROJECT, collection, problems_with, text_of
from render.ink import letters_on
from render.sheets_made import Made, made, needing, session_with, sheet_context
from render.test_sheets_on_paper import _off, _on_another
from storymaths.model.book import Book
from storymaths.model.document import Document
from storymaths.parse.document import parse_document
from storymaths.render.sheets.answer_key import answer_key
from storymaths.render.sheets.cast_cards import book_cards
from storymaths.render.sheets.of_page import session_sheets
from storymaths.render.sheets.pictures import LARGEST, for_paper
from storymaths.render.sheets.sheet_context import SheetContext

BOOK = "books/cliff-house-lift/index.md"
CAMEL = (PROJECT / "content/books/cliff-house-lift/cast/camel.svg").read_text(encoding="utf-8")
MARKUP = "#panic() $x^2$ *a* _b_ `c` \\ @d <e> [f] = g // h #sys.inputs"


def book_with(before: str, after: str) -> Document[Book]:
    """The first book with one text changed."""
    page = parse_document(f"content/{BOOK}", text_of(BOOK).replace(before, after))
    assert isinstance(page, Document)
    assert isinstance(page.fields, Book)
    return page


def faults_of(sheet: Made) -> list[str]:
    """Letters off the paper or on each other."""
    return [fault for letters in letters_on(sheet.pdf) for fault in (*_off(letters), *_on_another(letters))]


@pytest.mark.parametrize(
    "name",
    [
        "Sir Bartholomew Featherstonehaugh of the Upper Plover Quay Quay",
        "W" * 60,
        "猫のたま",
        "\N{HEDGEHOG}",
        "Ali\u200fمرحبا",
        MARKUP,
    ],
)
def test_a_name_of_any_length_in_any_signs(name: str) -> None:
    book = book_with("name: Camel", f"name: {name!r}")
    assert faults_of(made(book_cards(sheet_context(), book))) == []


def test_markup_in_a_title_is_printed_as_it_is_written() -> None:
    activity = f"kind: bonds\ntitle: {MARKUP!r}\ntotal: 7\nparts: 2\n"
    page = session_with(activity)
    fields = page.fields.model_copy(update={"title": MARKUP, "summary": MARKUP})
    page = replace(page, fields=fields)
    for data in session_sheets(sheet_context(), page):
        assert made(data).pdf, data.what
    key = made(answer_key(sheet_context(), page, sheet_context().activities(page)))
    text = pdfium.PdfDocument(key.pdf)[0].get_textpage().get_text_bounded()
    assert "Answers: #panic() $x^2$ *a* _b_ `c`" in text.replace("\r\n", " ")


BAD = {
    "broken": "<svg viewBox='0 0 9 9'><path d='M0 0",
    "no drawing": "hello",
    "nonsense path": "<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 9 9'><path d='Mx y Z'/></svg>",
    "no size": "<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 0 0'><path d='M0 0'/></svg>",
    "script": CAMEL.replace("</svg>", "<script>fetch('https://example.com')</script></svg>"),
    "on load": CAMEL.replace("<svg ", "<svg onload='fetch(1)' "),
    "outside picture": CAMEL.replace("</svg>", "<image href='https://example.com/a.png' width='9' height='9'/></svg>"),
    "outside style": CAMEL.replace("</svg>", "<style>@import url(https://example.com/a.css);</style></svg>"),
    "outside use": CAMEL.replace("</svg>", "<use href='https://example.com/a.svg#b'/></svg>"),
    "entities": '<!DOCTYPE svg [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;">]>' + CAMEL,
    "huge": CAMEL.replace("</svg>", "<!--" + "x" * LARGEST + "--></svg>"),
    "deep": "<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 9 9'>" + "<g>" * 5000 + "</g>" * 5000 + "</svg>",
}


@pytest.mark.parametrize("drawing", BAD)
def test_a_drawing_that_cannot_be_used_leaves_a_card_with_its_name(drawing: str) -> None:
    book = collection().books["cliff-house-lift"]
    sheet = made(book_cards(sheet_context(camel=BAD[drawing]), book))
    text = pdfium.PdfDocument(sheet.pdf)[0].get_textpage().get_text_bounded()
    assert "Camel" in text
    assert b"example.com" not in sheet.pdf
    assert faults_of(sheet) == []


def test_blurs_and_shadows_are_left_out_on_paper() -> None:
    blur = CAMEL.replace("</svg>", "<filter id='f'/><g filter='url(#f)'/><g style='filter:url( #f )'/></svg>")
    assert 'filter="none"' in (for_paper(blur) or "")
    assert 'style="filter: none"' in (for_paper(blur) or "")


def test_a_drawing_with_a_script_or_a_link_elsewhere_is_not_used() -> None:
    assert for_paper(CAMEL)
    assert [name for name in BAD if for_paper(BAD[name])] == []


@pytest.mark.parametrize(
    "drawing", [name for name in BAD if name != "huge"]
)  # refused by its size, before anybody looks into it
def test_a_drawing_that_cannot_be_used_is_a_problem_of_its_file(drawing: str) -> None:
    name = "books/cliff-house-lift/cast/camel.svg"
    problems = problems_with({name: BAD[drawing]})
    assert {problem.rule for problem in problems} == {"drawing-unusable"}
    assert all(problem.place.path == f"content/{name}" and problem.fix for problem in problems)


def test_a_missing_drawing_is_no_trouble() -> None:
    sheet = made(
        book_cards(
            SheetContext(collection(), lambda page: (), lambda source: None), collection().books["cliff-house-lift"]
        )
    )
    assert faults_of(sheet) == []


def test_a_cast_of_forty_goes_on_to_more_pages() -> None:
    book = collection().books["cliff-house-lift"]
    cast = book.fields.cast
    many: tuple[Any, ...] = tuple(
        cast[n % len(cast)].model_copy(update={"id": f"friend-{n}", "name": f"Friend {n}"}) for n in range(40)
    )
    book = replace(book, fields=book.fields.model_copy(update={"cast": many}))
    sheet = made(book_cards(sheet_context(), book, "mass"))
    assert len(pdfium.PdfDocument(sheet.pdf)) == 10 + 5 + 3
    assert faults_of(sheet) == []


def test_an_activity_of_forty_numbers_makes_forty_cards() -> None:
    numbers = ", ".join(str(n) for n in range(1, 41))
    page = needing(session_with(f"kind: sort\ntitle: Odd or even\nnumbers: [{numbers}]\nby: [odd(n)]\n"), "number-card")
    sheets = {data.what: data for data in session_sheets(sheet_context(), page)}
    assert len(sheets["number-cards"].parts[0].data["cards"]) == 40
    assert faults_of(made(sheets["number-cards"])) == []


def test_no_cards_are_printed_where_nobody_lays_any() -> None:
    page = session_with("kind: sort\ntitle: Odd or even\nnumbers: [1, 2, 3]\nby: [odd(n)]\n")
    names = {data.what for data in session_sheets(sheet_context(), needing(page, "pencil"))}
    assert not names & {"number-cards", "sign-cards", "sorting-ring"}
