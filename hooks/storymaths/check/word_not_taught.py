"""Words used as known that no earlier session has taught."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.problem import Problem
from ..model.rule import COMMON_PRACTICE, Rule

RULE = Rule(
    name="word-not-taught",
    says="A word used again was new in an earlier session or a book that comes before, or is of an earlier year, or is everyday talk.",
    why="A question holds no maths for a child who does not know its words.",
    source=COMMON_PRACTICE,
    wrong="session 1: words: {again: [remainder]}",
    right="session 1: words: {new: [remainder]}",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each word under ``again`` that nothing before has taught."""
    words = collection.reference.words
    unread_folders = {page.folder for page in collection.unread}
    for book in sorted(collection.book_ids):
        taught = {word for page in collection.sessions_before(book) for word in page.fields.words.new}
        for page in collection.sessions_of(book):
            if page.folder in unread_folders or any(word not in words for word in taught):
                break  # a page that could not be read, or a word misspelt, may be what teaches it
            session = page.fields
            for index, name in enumerate(session.words.again):
                word = words.get(name)
                if word and name not in taught and not word.everyday and word.year >= session.year:
                    yield RULE.problem(
                        page.place("words", "again", index),
                        f'"{name}" is used as known, but no session before number {session.number} teaches it.',
                        "move it to words: new, or teach it in an earlier session. If another book of yours teaches it, "
                        "name that one in this book's index.md, under after:.",
                    )
            taught.update(session.words.new)
