"""How many ways a section tells, and its verdicts, against what its activities come to."""

from __future__ import annotations

import pytest
from project import collection, text_of
from storymaths.activities.on_pages import check_activities, work_out_pages
from storymaths.model.collection import Collection
from storymaths.model.document import Document
from storymaths.parse.collection import read_page

S2, S4, H1 = (f"books/cliff-house-lift/{name}.md" for name in ("session-2", "session-4", "home-1"))
FIVE = "there are five rides and no more."


def problems_of(path: str, old: str, new: str) -> list[tuple[str, str, int]]:
    whole = collection()
    text = text_of(path)
    assert old in text
    page = read_page(f"content/{path}", text.replace(old, new, 1).encode(), whole.reference.limits.files)
    assert isinstance(page, Document)
    pages = [page if one.path == page.path else one for one in whole.documents if one.path == page.path or one.book]
    changed = Collection(tuple(pages), (), whole.files, whole.reference)
    found = check_activities(work_out_pages(changed), [page])
    return [(p.rule, p.message, text[: text.index(old)].count("\n") + 1 - p.place.line) for p in found]


@pytest.mark.parametrize(
    ("words", "is_found"),
    [
        (
            "there are six rides and no more.",
            '"there are six rides and no more" is not so: 5 the activity beside it finds.',
        ),
        ("there are four ways.", '"there are four ways" is not so: 5 the activity beside it finds.'),
        ("there are 6 answers in all.", '"there are 6 answers in all" is not so: 5 the activity beside it finds.'),
        ("look for all seven ways.", '"all seven ways" is not so: 5 the activity beside it finds.'),
        ("four ways, and no more.", '"four ways, and no more" is not so: 5 the activity beside it finds.'),
    ],
)
def test_a_count_the_activity_does_not_bear_out(words: str, is_found: str) -> None:
    assert problems_of(S2, FIVE, words) == [("ways-miscounted", is_found, 0)]


@pytest.mark.parametrize(
    "words",
    [
        "there are five ways.", "there are three ways to hold a card.", "there are two ways with Camel.", "are there six ways?",
        "if there are six ways, one is told twice.", "there are not six ways.", "both ways of sitting are level.", "all five ways.",
        "there are six friends.", "three ways of writing it are enough.",
    ],
)  # fmt: skip
def test_other_ways_are_left(words: str) -> None:
    assert problems_of(S2, FIVE, words) == []


def test_a_count_and_its_list() -> None:
    ((rule, message, _),) = problems_of(H1, "there are three ways.", "there are four ways.")
    assert rule == "ways-miscounted"
    assert message == '"there are four ways" is not so: 3 are listed after it.'


def test_a_verdict_beside_its_statement() -> None:
    old = "On another day put every ride"
    assert problems_of(S4, old, f"It is always true. {old}") == []
    ((rule, message, _),) = problems_of(S4, old, f"It is sometimes true. {old}")
    assert (rule, message) == (
        "activity-claim-wrong",
        '"It is sometimes true" is not so: the statement beside it is always true.',
    )
