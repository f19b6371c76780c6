"""What stands in double square brackets and prints nothing."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.body import Fence
from ..model.collection import Collection
from ..model.document import Document
from ..model.names import LEFT
from ..model.page_fields import PageFields
from ..model.problem import Place, Problem
from ..model.rule import HOUSE_RULE, Rule

RULE = Rule(
    name="name-unknown",
    says="What is named in [[ ]] is a fact of a character, or the count, answers or table of an activity.",
    why="A name that means nothing would be printed as it stands, brackets and all, in front of a class.",
    source=HOUSE_RULE,
    wrong="Ram is as heavy as [[ram.maas]].",
    right="Ram is as heavy as [[ram.mass]].",
    since="0.2.0",
)
_NO_NAME = (
    "this is no name of a fact or an activity.",
    "write a fact as [[ram.mass]], an activity by its id as [[every-ride: count]]; put a table on a line of its own.",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each name that is left as it was written."""
    for page in collection.documents:
        for words, place in _left(page):
            message, fix = page.prints.wrong.get(words, (f'"[[{words}]]": {_NO_NAME[0]}', _NO_NAME[1]))
            yield RULE.problem(place, message, fix)


def _left(page: Document[PageFields]) -> Iterator[tuple[str, Place]]:
    for loc, text in page.texts:
        for match in LEFT.finditer(text) if "[[" in text else ():
            yield match[1], page.locator.place(loc, match[0], text[: match.start()])
    if "[[" not in page.body:
        return
    data = {
        line
        for fence in page.content.every(Fence)
        for line in range(fence.line, fence.line + fence.text.count("\n") + 1)
    }
    for number, line in enumerate(page.body.split("\n"), start=page.body_line):
        for match in LEFT.finditer(line):
            is_table = match[1] in page.prints.tables and line.strip() == match[0]
            if not is_table and (number not in data or match[1] in page.prints.wrong):
                yield match[1], page.as_written(Place(page.path, number, match.start() + 1))
