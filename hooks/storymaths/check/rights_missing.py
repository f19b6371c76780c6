"""Books whose rights leave open what may be done with them."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.book import Book
from ..model.collection import Collection
from ..model.imprint import EachBook
from ..model.problem import Problem
from ..model.prose import Loc
from ..model.rule import Rule

RULE = Rule(
    name="rights-missing",
    says="A book says whose it is and what a school may do with it; one in copyright names its publisher, "
    "and neither its story nor its pictures are on the site.",
    why="Schools copy what they are not told not to copy.",
    source="Copyright, Designs and Patents Act 1988, sections 12, 30 and 32 to 36.",
    wrong="rights: in-copyright (and no publisher)",
    right="rights: in-copyright, publisher: …, rights_note: Read your own copy aloud; do not copy pages.",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each book without rights, or that gives more than its rights allow."""
    each_its_own = isinstance(collection.reference.imprint.licence, EachBook)
    for book, page in collection.books.items():
        fields: Book = page.fields
        if each_its_own and fields.licence is None:
            yield RULE.problem(
                page.place(),
                f'site_data/site.yaml says that each book has its own licence, and "{fields.title}" has none.',
                "add licence: with kind: open, paid or reserved, and its name; or choose one licence for all in site.yaml.",
            )
        if fields.rights is None or fields.rights_note is None:
            lacking = "rights" if fields.rights is None else "rights_note"
            yield RULE.problem(
                page.place(),
                f'The book "{fields.title}" has no {lacking}.',
                "add rights: own, public-domain or in-copyright, and rights_note: what a school may do with it.",
            )
        elif fields.rights == "in-copyright":
            if fields.publisher is None:
                yield RULE.problem(
                    page.place("rights"), "A book in copyright names its publisher.", "add publisher: with its name."
                )
            for loc, picture in _pictures(fields):
                yield RULE.problem(
                    page.place(*loc),
                    f"{picture} stands for a book in copyright. The pictures of a book, its cover among them, are its "
                    "publisher's, and may not be on the site.",
                    "take it out: a card with the title and tokens for the cast stand there. If it is your own photograph or "
                    "drawing of a toy or of objects, say so beside it: shows: toy, or shows: objects.",
                )
            if book in collection.stories:
                yield RULE.problem(
                    collection.stories[book].place("kind"),
                    "The story of a book in copyright is on the site.",
                    "take the story file out: the site holds page numbers and our own words only.",
                )


def _pictures(book: Book) -> Iterator[tuple[Loc, str]]:
    """The pictures whose author does not say that they are no pictures from the book."""
    if book.cover and book.cover.shows is None:
        yield ("cover", "picture"), book.cover.picture
    for index, character in enumerate(book.cast):
        if character.picture and character.shows is None:
            yield ("cast", index, "picture"), character.picture
