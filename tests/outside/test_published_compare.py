"""Published calculations and equalities that the kind compare can express come to their published answers."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest
from activities.trials import read
from outside.published_cases import cases_of
from storymaths.activities.compare import KIND
from storymaths.parse.number_sentence import find_number_sentences, is_true


@pytest.mark.parametrize("case", cases_of(KIND), ids=lambda case: case["id"])
def test_it_comes_to_the_published_answer(case: dict[str, Any]) -> None:
    solution = KIND.solve(*read(KIND, case["activity"], max(case["year"], 2)))
    for key, values in case["expect"].items():
        assert [answer.data[key] for answer in solution.answers] == values
    for answer in solution.answers:
        assert all(is_true(sentence) for sentence in find_number_sentences(answer.worked))
    found = [(str(answer.data["statement"]), str(answer.data["fill"])) for answer in solution.answers]
    if case["answer"] is True:
        assert len(found) == len(case["activity"]["statements"])
        return
    published = list(_texts(case["answer"]))
    assert len(published) == len(found)
    for text, (statement, fill) in zip(published, found, strict=True):
        assert text in (fill, statement) or statement.startswith(f"{text} = ")


def _texts(published: Any) -> Iterator[str]:
    """A published answer as the texts it stands for, in order."""
    if isinstance(published, dict) and "to" in published:
        first, last = published.values()
        yield from map(str, range(first, last + 1))
    elif isinstance(published, dict):
        yield from _texts(list(published.values()))
    elif isinstance(published, list):
        for item in published:
            yield from _texts(item)
    else:
        yield str(published)
