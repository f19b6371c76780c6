"""Cards that lead to pages, as lists of them: the same on every page that has them."""

from __future__ import annotations

from collections.abc import Iterable

from markupsafe import Markup

from ...model.any_book import AnyBook
from ...model.book import Book
from ...model.document import Document
from ...model.home import Home
from ...model.session import Session
from ...render.site import Site


def session_cards(site: Site, here: str, about: object, pages: Iterable[Document[Session]]) -> Markup:
    """Sessions as cards for the page ``here``, with the books they are from."""
    return _cards(site, here, "session_card", pages)


def home_cards(
    site: Site, here: str, about: object, pages: Iterable[Document[Home]] | Iterable[Document[AnyBook]]
) -> Markup:
    """What is done at home as cards, with its book where it has one."""
    return _cards(site, here, "home_card", pages)


def book_cards(site: Site, here: str, about: object, pages: Iterable[Document[Book]]) -> Markup:
    """Books as cards with their covers."""
    return _cards(site, here, "book_card", pages)


def _cards(
    site: Site,
    here: str,
    card: str,
    pages: Iterable[Document[Session]]
    | Iterable[Document[Home]]
    | Iterable[Document[AnyBook]]
    | Iterable[Document[Book]],
) -> Markup:
    listed = list(pages)
    return site.fill("cards.html", here, card=card, pages=listed) if listed else Markup()
