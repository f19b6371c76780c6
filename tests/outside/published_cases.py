"""Published questions with their published answers, put to the kinds that can express them."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

from activities.trials import read, stands
from storymaths.activities.kind import Kind
from yaml_files import read_yaml


def cases_of(kind: Kind[Any]) -> list[dict[str, Any]]:
    """The cases kept for a kind."""
    path = Path(__file__).parent / "cases" / f"{kind.name.replace('-', '_')}.yaml"
    cases: list[dict[str, Any]] = read_yaml(path)
    return cases


def agrees(kind: Kind[Any], case: dict[str, Any]) -> None:
    """The activity comes to what is expected, and what is expected holds the published answer."""
    assert case["activity"]["kind"] == kind.name
    assert case["source"]["document"]
    solution = kind.solve(*read(kind, case["activity"], max(case["year"], 2)))
    for key, values in case["expect"].items():
        assert [answer.data[key] for answer in solution.answers] == values, case["id"]
    _holds_published(case["answer"], list(_flat(list(case["expect"].values()))), len(solution.answers))
    stands(solution)


def _holds_published(published: Any, expected: list[Any], answers: int) -> None:
    if isinstance(published, dict):
        published = {**published}
        published.pop("rule", None)
        assert published.pop("ordered_solutions", answers) == answers
    assert set(_flat(published)) <= set(expected), (published, expected)


def _flat(value: Any) -> Iterator[Any]:
    if isinstance(value, dict):
        value = list(value.values())
    if isinstance(value, list):
        for item in value:
            yield from _flat(item)
    else:
        yield value
