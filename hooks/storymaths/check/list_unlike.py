"""A list of numbers that is another of its book, but for one number."""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterator, Sequence

from ..claims.lists import Listed, Numbers, is_stated, lists_in, lists_in_data, lists_of_cast, missed_step, nearly
from ..model.collection import Collection
from ..model.document import Document
from ..model.page_fields import PageFields
from ..model.problem import Problem
from ..model.rule import HOUSE_RULE, Rule

RULE = Rule(
    name="list-unlike",
    says="A list of four numbers or more that a book's pages say again, or that its cast or an activity has, is the same each"
    " time; a count keeps its step.",
    why="Coins in the cup that are not those in the story, and the class finds it out.",
    source=HOUSE_RULE,
    wrong="the coins, 10, 5, 2, 2 and 2 (purse: [10, 5, 2, 2, 1])",
    right="the coins, 10, 5, 2, 2 and 1",
    since="0.2.0",
)
_FIRM = 2
"""A list said so often is meant; so is one of the cast's or an activity's."""


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each list, said once, that is but for one number one that is said more often or stands in data."""
    by_book: dict[str, list[Document[PageFields]]] = defaultdict(list)
    for page in collection.documents:
        if page.book is not None:
            by_book[page.book].append(page)
    for name, pages in by_book.items():
        said = [(page, listed) for page in pages for listed in lists_in(page.prose)]
        if said:
            book = collection.books.get(name)
            firm = {*lists_of_cast(book.fields)} if book else set()
            yield from _unlike(said, firm | {each for page in pages for each in _in_activities(page)})


def _in_activities(page: Document[PageFields]) -> Iterator[Numbers]:
    return (each for fence in page.content.activities for each in lists_in_data(fence.text))


def _unlike(said: Sequence[tuple[Document[PageFields], Listed]], firm: set[Numbers]) -> Iterator[Problem]:
    times = Counter(listed.numbers for _, listed in said)
    firm = firm | {numbers for numbers, count in times.items() if count >= _FIRM}
    for page, listed in said:
        near = nearly(listed.numbers, sorted(firm)) if listed.numbers not in firm else None
        if near and is_stated(page.prose, listed):
            yield RULE.problem(
                page.place_in_prose(listed.start, listed.words),
                f'"{listed.words}" is {", ".join(map(str, near))} but for one number, and the book says that elsewhere.',
                "make the two agree; where both are meant, say the other in words or in another order.",
            )
        missed = missed_step(listed.numbers) if listed.numbers not in firm else None
        if missed and is_stated(page.prose, listed):
            yield RULE.problem(
                page.place_in_prose(listed.start, listed.words),
                f'"{listed.words}" keeps one step but for {missed[0]}, which would be {missed[1]}.',
                "put right the number.",
            )
