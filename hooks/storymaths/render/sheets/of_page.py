"""The sheets of a page: those of a session in the order a teacher prints them, of a home activity, and of a book."""

from __future__ import annotations

from ...model.book import Book
from ...model.document import Document
from ...model.home import Home
from ...model.session import Session
from .answer_key import answer_key
from .booklet import story_booklet
from .cast_cards import book_cards, counting_facts, session_cards
from .desk import Desk
from .exit_slips import exit_slips
from .half_page import half_page
from .mats import session_mats
from .number_cards import number_cards
from .one_page_plan import one_page_plan
from .recording import recording_sheet
from .sheet import SheetData


def session_sheets(desk: Desk, page: Document[Session]) -> list[SheetData]:
    """What a session is taught with."""
    activities = desk.activities(page)
    sheets = [
        one_page_plan(desk, page),
        session_cards(desk, page, activities),
        number_cards(desk, page, activities),
        *session_mats(desk, page, activities),
        recording_sheet(desk, page, activities),
        exit_slips(desk, page),
        answer_key(desk, page, activities),
    ]
    return [sheet for sheet in sheets if sheet]


def home_sheets(desk: Desk, page: Document[Home]) -> list[SheetData]:
    """What is sent home."""
    return [half_page(desk, page)]


def book_sheets(desk: Desk, book: Document[Book], name: str) -> list[SheetData]:
    """What belongs to the whole book: the story if its rights allow, and the cast in every size."""
    story = desk.collection.stories.get(name)
    booklet = story_booklet(desk, book, story) if story else None
    facts = counting_facts(book.fields)
    return [*([booklet] if booklet else []), *(book_cards(desk, book, fact) for fact in ("", *facts))]
