"""Parts of objectives as authors name them: what is taken, what is refused, and what each is told."""

from __future__ import annotations

import pytest
from project import problems_with, text_of

PAGE = "books/cliff-house-lift/session-2.md"
OLD = "england-content-domain: [2C3: [missing-number]]"


def told(objectives: str) -> list[tuple[str, str, str]]:
    """Rule, message and fix of every problem where the session names these objectives."""
    text = text_of(PAGE)
    assert OLD in text
    problems = problems_with({PAGE: text.replace(OLD, objectives, 1)})
    return [(problem.rule, problem.message, problem.fix) for problem in problems]


@pytest.mark.parametrize(
    "objectives",
    [
        "england-content-domain: [2C3: [inverse, missing-number]]",
        "england-content-domain: [2C3: all]",
        "england-content-domain: [2C3: inverse]",
        "england-content-domain:\n    - 2C3: [inverse]\n    - 2C4: [add-numbers, in-writing]",
        "england-content-domain: [2F1b, 2C3: all]",  # an objective that is one thing needs no part
    ],
)
def test_every_way_to_name_parts(objectives: str) -> None:
    assert [one for one in told(objectives) if one[0] != "objective-without-trace"] == []


def test_a_code_alone_is_told_every_part_to_choose_from() -> None:
    ((rule, message, fix),) = told("england-content-domain: [2C3]")
    assert (rule, message) == (
        "objective-part-unknown",
        "2C3 has parts, and nothing says which of them this session teaches.",
    )
    for words in ("2C3: all", "inverse (knows that", "check (checks", "missing-number (finds"):
        assert words in fix


@pytest.mark.parametrize(
    ("objectives", "says"),
    [
        ("england-content-domain: [2C3: [mising-number]]", 'Did you mean "missing-number"?'),
        ("england-content-domain: [2C3: [inverse, inverse]]", "named twice"),
        ("england-content-domain: [2C3: [all, inverse]]", '"all" already says every part'),
        ("england-content-domain: [2F1b: [half]]", "2F1b has no parts"),
    ],
)
def test_a_part_that_cannot_be_meant(objectives: str, says: str) -> None:
    ((rule, message, _),) = told(objectives)
    assert rule == "objective-part-unknown"
    assert says in message


@pytest.mark.parametrize("objectives", ["[{2C3: []}]", "[{2C3: 4}]", "[7]", "[{2C3: [inverse], 2C4: [in-writing]}]"])
def test_what_is_no_objective_at_all(objectives: str) -> None:
    ((rule, message, _),) = told(f"england-content-domain: {objectives}")
    assert rule == "field-mistyped"
    assert "2N1: [tens, tens-back]" in message


def test_what_another_year_meets_needs_no_parts_and_may_have_them() -> None:
    text = text_of(PAGE)
    for old, new in (("[1C2b, 1C4]", "[1C2b: [read-plus], 1C4]"), ("[1C2b, 1C4]", "[1C2b: [red-plus], 1C4]")):
        assert old in text
        problems = problems_with({PAGE: text.replace(old, new, 1)})
        assert [problem.rule for problem in problems] == ["objective-part-unknown"] * ("red-plus" in new)


def test_an_objective_of_the_same_year_is_taken_up_again_where_a_session_before_teaches_it() -> None:
    old = "revisits:\n  england-content-domain: [1C2b, 1C4]"
    for code, says in (("2N2b", []), ("2C4", ["No session before this one teaches 2C4"])):
        text = text_of(PAGE).replace(old, f"revisits:\n  england-content-domain: [{code}]", 1)
        found = [problem.message for problem in problems_with({PAGE: text}) if problem.rule == "objective-wrong-year"]
        assert [message.split(",")[0] for message in found] == says
