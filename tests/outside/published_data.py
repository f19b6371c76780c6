"""Published questions whose answers hold more than numbers: each answer's data against what is expected of it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from activities.trials import read, stands
from storymaths.activities.kind import Kind


def holds(kind: Kind[Any], case: dict[str, Any]) -> None:
    """The activity comes to what is expected, and what is expected holds the published answer."""
    assert case["activity"]["kind"] == kind.name
    assert case["source"]["document"]
    solution = kind.solve(*read(kind, case["activity"], max(case["year"], 2)))
    stands(solution)
    assert len(solution.answers) == len(case["expect"]), case["id"]
    for answer, expected in zip(solution.answers, case["expect"], strict=True):
        assert within(expected, answer.data), (case["id"], answer.data)
    published = case["answer"]
    if isinstance(published, dict) and "value" in published:
        published = published["value"]  # the rest says how near a reading off a drawing had to be
    assert set(leaves(published)) <= {"not always", *leaves(case["expect"])}, case["id"]
    placed = case["expect"][0].get("regions")
    if placed:  # what the question asks for is in the ring, or where the rings cross
        assert list(leaves(published)) == placed.get("both", placed.get("in"))
    if published == "not always":
        assert solution.answers[0].data["verdict"] != "always"


def within(expected: Any, found: Any) -> bool:
    """Whether all that is expected is there: keys may be fewer, lists and values are the same."""
    if isinstance(expected, dict):
        return all(key in found and within(value, found[key]) for key, value in expected.items())
    return bool(expected == found)


def leaves(value: Any) -> Iterator[str]:
    """Every single value, as written."""
    if isinstance(value, (dict, list)):
        for item in value.values() if isinstance(value, dict) else value:
            yield from leaves(item)
    else:
        yield str(value)
