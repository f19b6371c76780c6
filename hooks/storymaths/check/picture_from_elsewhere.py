"""Pictures that are not files of the collection."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.book import Book
from ..model.collection import Collection
from ..model.document import Document, Fields
from ..model.problem import Place, Problem
from ..model.rule import HOUSE_RULE, Rule
from .html_found import Address, addresses_in, texts_of

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
        for place, address in (*_in_words(page), *_in_fields(page)):
            if address.leads_out is not None:
                yield RULE.problem(
                    place,
                    "This picture is not in the collection: nothing on a page is loaded from anywhere else.",
                    "put the picture in the folder of this page, if it is yours to publish, and name it by its file.",
                )


def _in_words(page: Document[Fields]) -> Iterator[tuple[Place, Address]]:
    for text in texts_of(page):
        for address in addresses_in(text):
            if address.picture:
                yield text.place(address.at, address.written), address


def _in_fields(page: Document[Fields]) -> Iterator[tuple[Place, Address]]:
    if isinstance(page.fields, Book):
        cover = page.fields.cover.picture
        yield page.place("cover", "picture"), Address(cover, cover, 0, picture=True)
        for index, character in enumerate(page.fields.cast):
            picture = character.picture
            yield page.place("cast", index, "picture"), Address(picture, picture, 0, picture=True)
