"""The search for versions is given up after so many steps, which are counted: alike on every machine, and in words."""

from __future__ import annotations

from dataclasses import replace

import pytest
import yaml
from project import reference
from storymaths.activities.tune import tune
from storymaths.activities.work_out import work_out
from storymaths.model.effort import Effort, GivenUp

WORST = {
    "kind": "bonds",
    "title": "Five of twelve",
    "cast": {f"friend-{place}": {"mass": place} for place in range(1, 13)},
    "fact": "mass",
    "whole": 23,
    "parts": 5,
    "years": {year: {"answers": 11} for year in (1, 3, 4, 5, 6)},
}


def test_steps_are_counted_down_to_nothing() -> None:
    effort = Effort(10)
    effort.spend(10)
    with pytest.raises(GivenUp):
        effort.spend(1)


def test_the_worst_search_is_a_problem_of_each_year_it_could_not_look_at() -> None:
    small = reference().limits.activity.model_copy(update={"version_steps": 3000})
    told = replace(reference(), limits=reference().limits.model_copy(update={"activity": small}))
    first, again = (work_out(yaml.safe_dump(WORST), "a.md", 1, None, 2, told).problems for _ in range(2))
    assert first == again
    given_up = [problem for problem in first if "was given up" in problem.message]
    assert given_up
    assert {problem.rule for problem in given_up} == {"activity-no-version"}
    assert "fewer characters" in given_up[0].fix
    assert "was given up" in tune(yaml.safe_dump(WORST), 4, (40, 50), None, told).problems[0].message


def test_further_numbers_are_those_found_before_the_search_is_given_up() -> None:
    """The steps are those of the whole activity: what the years took is not there for these."""
    text = yaml.safe_dump(WORST | {"parts": 2, "years": {}})
    small = reference().limits.activity.model_copy(update={"version_steps": 300})
    told = replace(reference(), limits=reference().limits.model_copy(update={"activity": small}))
    most, fewer = (work_out(text, "a.md", 1, None, 2, lists).other_sets for lists in (reference(), told))
    assert len(fewer) < len(most)
