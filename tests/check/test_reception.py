"""A session for Reception: a short time together, and a week of things set out. Common practice, no source."""

from __future__ import annotations

import re

from project import problems_with, text_of

PAGE = "books/ferry-fare/session-1.md"
RULES = {"together-too-long", "nothing-set-out"}


def rules_broken(text: str) -> list[str]:
    return [problem.rule for problem in problems_with({PAGE: text}) if problem.rule in RULES]


def for_reception(minutes: int) -> str:
    return text_of(PAGE).replace("year: 1\nminutes: 45", f"year: Reception\nminutes: {minutes}", 1)


def without_what_is_set_out(text: str) -> str:
    return re.sub(r"set_out:\n(  .*\n)+", "", text)


def test_together_for_fifteen_minutes_and_no_more() -> None:
    assert rules_broken(for_reception(15)) == []
    assert rules_broken(for_reception(16)) == ["together-too-long"]


def test_something_is_set_out_for_the_week() -> None:
    assert rules_broken(without_what_is_set_out(for_reception(15))) == ["nothing-set-out"]
    assert rules_broken(without_what_is_set_out(text_of(PAGE))) == []


def test_a_draft_may_wait() -> None:
    draft = for_reception(45).replace("kind: session\n", "kind: session\nstatus: draft\n", 1)
    assert rules_broken(without_what_is_set_out(draft)) == []
