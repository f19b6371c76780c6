"""What is solved once and kept: as many solves as activities, none again while nothing changes, nothing kept for nobody."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest
from project import collection
from storymaths.activities import work_out
from storymaths.activities.memory import ActivityInput, Memory
from storymaths.activities.on_pages import work_out_pages
from storymaths.activities.work_out import WorkedOut
from storymaths.model.collection import Collection
from storymaths.model.document import Document
from storymaths.parse.document import parse_document

Solve = Callable[[ActivityInput], WorkedOut]


def pages_with(*numbers: int, a_page: int = 10) -> Collection:
    """Pages of activities told apart by their number."""
    documents = []
    for at in range(0, len(numbers), a_page):
        blocks = "\n".join(f"```maths\nkind: order\ntitle: Number {n}\n```\n" for n in numbers[at : at + a_page])
        page = parse_document(f"content/page-{at}.md", f"---\nkind: page\ntitle: P\nsummary: S.\n---\n\n{blocks}")
        assert isinstance(page, Document)
        documents.append(page)
    return replace(collection(), documents=tuple(documents))


@pytest.fixture
def solved(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """The text of each activity that is solved, in order; solving costs nothing."""
    texts: list[str] = []

    def solve(asked: ActivityInput) -> WorkedOut:
        texts.append(asked.text)
        return WorkedOut(None, None, None, None, {}, ())

    monkeypatch.setattr(work_out, "_work_out", solve)
    return texts


@pytest.mark.parametrize("count", [10, 3000])
def test_each_is_solved_once_however_many_there_are(solved: list[str], count: int) -> None:
    whole = pages_with(*range(count))
    first = Memory[WorkedOut]()
    work_out_pages(whole, first)
    assert len(solved) == count
    work_out_pages(whole, Memory(first))
    work_out_pages(whole, first)
    assert len(solved) == count


def test_a_change_is_solved_and_nothing_else(solved: list[str]) -> None:
    first = Memory[WorkedOut]()
    work_out_pages(pages_with(1, 2, 3), first)
    work_out_pages(pages_with(0, 1, 2, 4, 3, a_page=2), Memory(first))
    assert [text.split()[-1] for text in solved] == ["1", "2", "3", "0", "4"]


def test_what_the_last_pass_did_not_ask_for_is_forgotten(solved: list[str]) -> None:
    first = Memory[WorkedOut]()
    work_out_pages(pages_with(1, 2), first)
    second = Memory(first)
    work_out_pages(pages_with(1), second)
    second.forget_the_pass_before()
    work_out_pages(pages_with(1, 2), second)
    work_out_pages(pages_with(1, 2), Memory(second))
    assert [text.split()[-1] for text in solved] == ["1", "2", "2"]


def test_other_reference_data_is_another_question(solved: list[str]) -> None:
    whole, memory = pages_with(1), Memory[WorkedOut]()
    work_out_pages(whole, memory)
    limits = whole.reference.limits.model_copy(update={"class_size": whole.reference.limits.class_size + 1})
    work_out_pages(replace(whole, reference=replace(whole.reference, limits=limits)), Memory(memory))
    assert len(solved) == 2


def test_other_numbers_to_practise_are_another_question() -> None:
    reference = collection().reference
    year = reference.years[2]
    money = year.practice.money.model_copy(update={"make": (30,)})
    other = year.with_what_came_before(year.met, year.practice.model_copy(update={"money": money}))
    assert replace(reference, years={**reference.years, 2: other}).fingerprint != reference.fingerprint
    assert replace(reference).fingerprint == reference.fingerprint
