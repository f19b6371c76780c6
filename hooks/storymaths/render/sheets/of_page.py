"""The sheets of a page: those of a session in the order a teacher prints them, of a home activity, and of a book."""

from __future__ import annotations

from ...model.book import Book
from ...model.document import Document
from ...model.home import Home
from ...model.session import Session
from .answer_key import answer_key
from .booklet import story_booklet
from .cast_cards import book_cards, counting_facts, session_cards
from .exit_slips import exit_slips
from .half_page import half_page
from .lesson_plan import lesson_plan
from .mats import session_mats
from .number_cards import number_cards
from .other_numbers import other_numbers_sheet
from .recording import recording_sheet
from .set_out import area_cards
from .sheet import SheetData
from .sheet_context import SheetContext


def session_sheets(sheets: SheetContext, page: Document[Session]) -> list[SheetData]:
    """What a session is taught with."""
    activities = sheets.activities(page)
    made = [
        lesson_plan(sheets, page),
        area_cards(sheets, page),
        session_cards(sheets, page, activities),
        number_cards(sheets, page, activities),
        *session_mats(sheets, page, activities),
        recording_sheet(sheets, page, activities),
        exit_slips(sheets, page),
        answer_key(sheets, page, activities),
        other_numbers_sheet(sheets, page, activities),
    ]
    return [sheet for sheet in made if sheet]


def home_sheets(sheets: SheetContext, page: Document[Home]) -> list[SheetData]:
    """What is sent home."""
    return [half_page(sheets, page)]


def book_sheets(sheets: SheetContext, book: Document[Book], name: str) -> list[SheetData]:
    """What belongs to the whole book: the story if its rights allow, and the cast in every size."""
    story = sheets.collection.stories.get(name)
    booklet = story_booklet(sheets, book, story) if story else None
    facts = counting_facts(book.fields)
    return [*([booklet] if booklet else []), *(book_cards(sheets, book, fact) for fact in ("", *facts))]
