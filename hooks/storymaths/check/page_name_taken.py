"""Pages with the address of a page, or of a folder, that the build makes itself."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.address import CONTENT, source_of
from ..model.book import BOOK_CARD
from ..model.collection import Collection
from ..model.problem import Place, Problem
from ..model.rule import HOUSE_RULE, Rule

RULE = Rule(
    name="page-name-taken",
    says="No file has the address of something the build makes itself.",
    why="One of the two would take the other's place without a word, and every page leads to the finder or the word bank.",
    source=HOUSE_RULE,
    wrong="content/words.md",
    right="content/our-words.md",
)
_MADE = frozenset({"404.md"})
_FOLDERS = ("look/", "fonts/", "pagefind/", "cards/", "coverage/", "templates/")


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each page or picture that would stand where a generated one stands."""
    generated = _MADE.union(collection.generated_pages)
    drawn = {
        CONTENT + page.beside(name)
        for page in collection.books.values()
        for name in (BOOK_CARD, *(f"token-{character.id}.svg" for character in page.fields.cast))
    }
    for path in sorted(collection.files):
        source = source_of(path)
        if source in generated:
            yield _problem(path, f"The build makes a page of its own at {source}.")
        elif path in drawn:
            yield _problem(path, f"The build draws {source} itself, for a book without a picture.")
        elif source.startswith(_FOLDERS):
            yield _problem(path, f"The build keeps files of its own in the folder {source.partition('/')[0]}.")


def _problem(path: str, message: str) -> Problem:
    return RULE.problem(Place(path), message, "give this file another name or folder.")
