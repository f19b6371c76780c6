"""The drawings that stand in for pictures, by the addresses they go by: of each book, only those it has no picture for."""

from __future__ import annotations

from collections.abc import Mapping

from ...model.book import COVER_IN_TYPE
from ...model.collection import Collection
from .cover import cover_in_type
from .token import token_drawing


def drawings_in_type(collection: Collection) -> Mapping[str, str]:
    """Each one's source inside ``content/``, and the drawing."""
    drawn: dict[str, str] = {}
    for name, page in collection.books.items():
        book, themes = page.fields, collection.reference.themes
        if book.cover is None:
            about = [themes[one] for one in book.themes if one in themes]
            gentle = [theme.name for theme in about if not theme.sensitive] or [theme.name for theme in about]
            drawn[page.beside(COVER_IN_TYPE)] = cover_in_type(name, book, gentle)
        for place, character in enumerate(book.cast):
            if character.picture is None:
                drawn[page.beside(book.picture_of(place))] = token_drawing(book.token_of(place))
    return drawn
