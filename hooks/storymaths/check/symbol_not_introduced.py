"""Signs new to the year that are used before a session has introduced them."""

from __future__ import annotations

from collections.abc import Iterator, Set

from ..model.collection import Collection
from ..model.document import Document
from ..model.problem import Problem
from ..model.rule import COMMON_PRACTICE, Rule
from ..model.session import Session
from .adult_matters import joins_a_size

RULE = Rule(
    name="symbol-not-introduced",
    says="A sign new in this year, and ≠, is introduced (symbols: new) here, in an earlier session or in a book before; ≠ only after =.",
    why="A child who has not been shown what a sign says will make up what it means.",
    source=COMMON_PRACTICE,
    wrong="session 1 uses ≠; symbols: {new: [≠]} stands in session 2",
    right="session 1: symbols: {new: [≠]}",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for the first use in a session of each sign nobody has introduced yet."""
    unread_folders = {page.folder for page in collection.unread}
    for book in sorted(collection.book_ids):
        introduced = {sign for page in collection.sessions_before(book) for sign in page.fields.symbols.new}
        for page in collection.sessions_of(book):
            if page.folder in unread_folders:
                break  # a page that could not be read may be what introduces it
            known = collection.reference.symbols_by(page.fields.year - 1)
            new = page.fields.symbols.new
            if "≠" in new and "=" not in known | introduced and "=" not in new[: new.index("≠")]:
                yield RULE.problem(
                    page.place("symbols", "new", new.index("≠")),
                    "≠ is introduced before =.",
                    "introduce = first: what is not equal means nothing before equal does.",
                )
            introduced |= set(new)
            for at, sign in _used_too_soon(page, collection, known | introduced):
                introduced.add(sign)  # told once a book
                yield RULE.problem(
                    page.place_in_prose(at, sign),
                    f"The sign {sign} is used, but no session so far has introduced it.",
                    f"add {sign} to symbols: new here, where it is first taught, or say it in words. "
                    "If another book of yours brings it in, name that one in this book's index.md, under after:.",
                )


def _used_too_soon(page: Document[Session], collection: Collection, known: Set[str]) -> Iterator[tuple[int, str]]:
    """The first use of each sign of the page's own year, and of ≠, that is not yet known."""
    of_the_year = collection.reference.symbols_by(page.fields.year) | {"≠"}
    said: set[str] = set()
    for at, sign in page.prose.signs:
        # A bend is another year's lesson.
        new = sign in of_the_year - known - said and page.prose.part_at(at).year is None
        if new and not joins_a_size(page.prose.text, at):
            said.add(sign)
            yield at, sign
