"""The drawings that stand in for pictures, by the addresses they go by: of each book, only those it has no picture for."""

from __future__ import annotations

from collections.abc import Mapping

from ...model.book import BOOK_CARD
from ...model.collection import Collection
from .card import book_card
from .token import token_drawing


def drawings_in_type(collection: Collection) -> Mapping[str, str]:
    """Each one's source inside ``content/``, and the drawing."""
    drawn: dict[str, str] = {}
    for name, page in collection.books.items():
        book = page.fields
        if book.cover is None:
            drawn[page.beside(BOOK_CARD)] = book_card(name, book)
        for place, character in enumerate(book.cast):
            if character.picture is None:
                drawn[page.beside(book.picture_of(place))] = token_drawing(book.token_of(place))
    return drawn
