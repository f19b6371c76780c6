"""Stories whose pages are not those the book's record says."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.problem import Problem
from ..model.rule import HOUSE_RULE, Rule

RULE = Rule(
    name="story-pages-differ",
    says="A story has a heading for each page of its book: ## Page 1, ## Page 2, and so on to the last.",
    why="Sessions say which page to stop on; the story must have that page, with that number.",
    source=HOUSE_RULE,
    wrong="pages: 14 … and a story that ends at ## Page 13",
    right="pages: 14 … ## Page 14",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem at the first heading of each story that is not the page that should come next."""
    for book, story in collection.stories.items():
        if book not in collection.books:
            continue
        pages = collection.books[book].fields.pages
        headings = [section.heading for section in story.content.sections]
        expected = [f"Page {number}" for number in range(1, pages + 1)]
        for index, heading in enumerate(headings):
            if index >= pages or heading.words != expected[index]:
                wanted = f'"## {expected[index]}" was expected here' if index < pages else f"the book has {pages} pages"
                yield RULE.problem(
                    story.place_on_line(heading.line),
                    f'The heading is "{heading.words}"; {wanted}.',
                    "number the pages in order, or correct pages: in the book's record.",
                )
                break
        else:
            if len(headings) < pages:
                yield RULE.problem(
                    story.place("[body]"),
                    f"The story has {len(headings)} pages; the book's record says {pages}.",
                    f'add "## {expected[len(headings)]}", or correct pages: in the book\'s record.',
                )
