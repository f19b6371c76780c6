"""The finder of the demonstration, asked as teachers and parents ask."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import lru_cache
from pathlib import Path
from typing import Any

import yaml
from finder_queries import FIRST, QUERIES, Finder

from .demonstration import demonstration

BY_PAGE: Sequence[Mapping[str, Any]] = yaml.safe_load(
    Path(__file__).with_name("finder_queries.yaml").read_text("utf-8")
)


@lru_cache(maxsize=1)
def finder() -> Finder:
    return Finder(demonstration())


def test_what_was_asked_for_comes_first_and_nothing_else() -> None:
    judged = {query["asks"]: finder().judge(query) for query in QUERIES}
    assert [asked for asked, one in judged.items() if not (one.has_the_right and one.has_no_other)] == []


def test_the_right_page_is_in_the_first_three_and_no_other_is_passed_off_for_it() -> None:
    pages = [
        idea.page.source.removeprefix("books/").removesuffix(".md").removesuffix("/index") for idea in finder().ideas
    ]
    for query in BY_PAGE:
        found = finder().find(query["asks"])
        first, near = ({pages[row] for row in found[rows][:FIRST]} for rows in ("rows", "nearest"))
        right = {*query["right"]}
        assert first & right or first == right, (query["asks"], first)
        assert first <= right | {*query.get("also", ())}, (query["asks"], first)
        assert near & {*query["nearest"]} if "nearest" in query else True, (query["asks"], near)
    assert len(BY_PAGE) > 50


def test_a_year_without_lessons_and_minutes_that_none_takes_lead_to_the_nearest() -> None:
    sessions = [idea.planned.minutes if idea.planned else 0 for idea in finder().ideas]
    found = finder().find("20 minute lesson")
    nearest_minutes = min(filter(None, sessions), key=lambda minutes: abs(minutes - 20))
    assert (found["rows"], sessions[found["nearest"][0]]) == ([], nearest_minutes)
    nearest = [finder().ideas[row].fields for row in finder().find("year 4")["nearest"][:FIRST]]
    assert all(3 in {one.best_year, *one.other_years} for one in nearest)


def test_what_pages_of_the_whole_collection_answer_is_no_list_of_ideas() -> None:
    """A leader asks for plans and coverage, which have pages of their own; years chosen beside them hold."""
    assert finder().find("national curriculum coverage")["rows"] == []
    years = [finder().ideas[row].fields for row in finder().find("whole year plan reception")["rows"]]
    assert years
    assert all(0 in {one.best_year, *one.other_years} for one in years)


def test_words_that_stand_nowhere_leave_what_else_was_asked() -> None:
    found = finder().find("zebra 15 minutes")
    assert found["rows"] == []
    assert all(
        finder().ideas[row].planned.minutes <= 15 for row in found["nearest"][:FIRST] if finder().ideas[row].planned
    )
    assert found["nearest"]


def test_what_had_to_be_let_go_of_is_told() -> None:
    found = finder().find("cooking maths weighing")
    assert (found["without"], found["untaught"]) == (["cooking"], ["cooking"])
    assert finder().find("decimals")["untaught"] == ["decimals"]
    assert finder().find("bear in a cave")["rows"] == []
