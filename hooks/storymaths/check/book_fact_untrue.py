"""What pages say of a book's characters that the book's own record does not."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator

from ..claims.cast_facts import BookFacts, UntrueFact
from ..claims.cast_pictures import unlike_picture, unlike_shape
from ..model.collection import Collection
from ..model.problem import Place, Problem
from ..model.rule import HOUSE_RULE, Rule
from ..parse.prose import year_of_bend

RULE = Rule(
    name="book-fact-untrue",
    says="What a page says of a character's number, or of how many there are of what the story counts, is what the book's record says.",
    why="A class that counts the legs in the picture will not find those on the plan.",
    source=HOUSE_RULE + " The cast and facts of the book's own record.",
    wrong="Donkey is 8 … (the cast says mass: 9)",
    right="Donkey is 9.",
    since="0.2.0",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each thing said of a character that the cast does not bear out."""
    facts = {name: BookFacts(book.fields) for name, book in collection.books.items()}
    for record in collection.books.values():
        for row, character in enumerate(record.fields.cast):
            for words, so in unlike_picture(character, record.fields.facts):
                here = record.place("cast", row, "alt", within=words)
                yield RULE.problem(here, f'"{words}" is not what the cast says: {so}.', "make the two agree.")
            for fact, (words, so) in unlike_shape(character, collection.reference.facts.shapes):
                here = record.place("cast", row, "facts", fact)
                yield RULE.problem(here, f'"{words}" cannot be: {so}.', "put right the number, or the shape.")
    for page in collection.documents:
        of_book = facts.get(page.book) if page.book is not None else None
        if of_book is None:
            continue
        own = _years_with_facts(page.raw.get("bends"))
        for prose, place in ((page.prose, page.place_in_prose), (page.notes, page.place_in_notes)):
            yield from problems(of_book.find(prose, own), place)


def problems(untrue: Iterable[UntrueFact], place: Callable[[int, str], Place]) -> Iterator[Problem]:
    """A problem for each thing said of a character that the cast does not bear out, at its ``place``."""
    for told in untrue:
        yield RULE.problem(
            place(told.start, told.words),
            f'"{told.words}" is not what the book\'s record says: {told.so}.',
            "put right the sentence, or the facts and counts in the book's record.",
        )


def _years_with_facts(bends: object) -> frozenset[int]:
    """The years for which a page's bends give the characters other numbers, or write them in another unit."""
    found = bends.items() if isinstance(bends, dict) else ()
    return frozenset(year_of_bend(year) or 0 for year, bend in found if _has_facts(bend))


def _has_facts(bend: object) -> bool:
    activities = bend.get("activities") if isinstance(bend, dict) else None
    versions = activities.values() if isinstance(activities, dict) else ()
    return any(isinstance(version, dict) and {"facts", "unit"} & version.keys() for version in versions)
