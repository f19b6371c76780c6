"""Pictures that are not files of the collection."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.book import Book
from ..model.collection import Collection
from ..model.document import Loc
from ..model.problem import Place, Problem
from ..model.rule import HOUSE_RULE, Rule
from .html_found import addresses_in, leads_out, texts_of

RULE = Rule(
    name="picture-from-elsewhere",
    says="A picture is a file of the collection, in the folder of its page.",
    why="A picture from another site tells that site who reads the page, may change or vanish, and may be somebody else's.",
    source=HOUSE_RULE,
    wrong="![A lift](https://example.org/lift.png)",
    right="![A lift](scenes/lift.svg)",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each picture, of a cover, a cast or in words, whose address leads out of the site."""
    for page in collection.documents:
        for text in texts_of(page):
            for address in addresses_in(text.content):
                if address.picture and address.leads_out is not None:
                    yield _problem(text.place(address.line, address.written))
        if isinstance(page.fields, Book):
            for loc, picture in _named_by(page.fields):
                if ":" in picture or leads_out(picture) is not None:
                    yield _problem(page.place(*loc))


def _problem(place: Place) -> Problem:
    return RULE.problem(
        place,
        "This picture is not in the collection: nothing on a page is loaded from anywhere else.",
        "put the picture in the folder of this page, if it is yours to publish, and name it by its file.",
    )


def _named_by(book: Book) -> Iterator[tuple[Loc, str]]:
    if book.cover:
        yield ("cover", "picture"), book.cover.picture
    for index, character in enumerate(book.cast):
        if character.picture:
            yield ("cast", index, "picture"), character.picture
