"""Published questions about amounts: exact numbers, in pence or pounds, and what must be found to agree with them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path
from typing import Any

from activities.trials import answers_of
from storymaths.activities.kind import Kind
from storymaths.parse.number_sentence import exact
from yaml_files import read_yaml

CASES = Path(__file__).parent / "cases"


@dataclass(frozen=True)
class Case:
    """One published question: the activities that express it, what they must find, and what was published."""

    id: str
    year: int
    activities: list[dict[str, Any]]
    expects: list[list[dict[str, Any]]]
    answer: Any
    told_in: str

    def __str__(self) -> str:
        return self.id


def published(kind: str) -> list[Case]:
    """The cases of ``cases/<kind>.yaml``."""
    read = read_yaml(CASES / f"{kind}.yaml")
    cases = []
    for case in read:
        several = isinstance(case["activity"], list)
        activities = case["activity"] if several else [case["activity"]]
        expects = case["expect"] if several else [case["expect"]]
        cases.append(Case(case["id"], case["year"], activities, expects, case["answer"], case.get("told_in", "")))
    return cases


def found(case: Case, kinds: dict[str, Kind[Any]]) -> list[list[dict[str, Any]]]:
    """What the activities find, cut down to what is expected of each answer."""
    return [
        [{key: answer[key] for key in wanted} for wanted, answer in zip(expected, answers, strict=True)]
        for expected, answers in zip(
            case.expects, (answers_of(kinds[told["kind"]], told, case.year) for told in case.activities), strict=True
        )
    ]


def leaves(value: Any, pence_in: int = 1) -> Iterator[Fraction | str]:
    """Every number and word of a value, numbers exactly."""
    if isinstance(value, dict):
        for item in value.values():
            yield from leaves(item, pence_in)
    elif isinstance(value, list):
        for item in value:
            yield from leaves(item, pence_in)
    elif isinstance(value, int):
        yield Fraction(value, pence_in)
    else:
        text = str(value).removesuffix("%")
        yield Fraction(exact(text)) if text[0].isdigit() else text


def agrees(case: Case, kinds: dict[str, Kind[Any]]) -> None:
    """The activities find what is expected, and that is the published answer; in its order where order is asked for."""
    assert found(case, kinds) == case.expects
    if case.answer is True:
        assert any(case.expects)
        return
    expected = list(leaves(case.expects, 100 if case.told_in == "pounds" else 1))
    answer = list(leaves(case.answer))
    if case.activities[0]["find"] == "order":
        assert expected == answer
    else:
        assert sorted(expected, key=str) == sorted(answer, key=str)
