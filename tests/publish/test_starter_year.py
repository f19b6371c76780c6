"""A session begins as long as a class of its year sits together, and with what its year has set out for the week."""

from __future__ import annotations

from pathlib import Path

import yaml
from project import PROJECT
from storymaths.parse.starter_words import starter_words
from storymaths.publish.starter_year import for_year
from storymaths.publish.starters import starters

STARTER = starters()["session"][1].text.read_text(encoding="utf-8")


def test_a_year_that_sits_together_for_a_short_time_begins_with_short_steps_and_something_set_out() -> None:
    front = yaml.safe_load(for_year(PROJECT, "Reception", STARTER).split("---\n")[1])
    assert (front["minutes"], [step["minutes"] for step in front["steps"]]) == (15, [5, 5, 5])
    (area,) = front["set_out"]
    assert list(area) == ["area", "put_out", "say", "notice"]
    assert {area["put_out"], *area["say"], *area["notice"]} <= starter_words("session")


def test_another_year_begins_as_the_starter_does(tmp_path: Path) -> None:
    assert for_year(PROJECT, "2", STARTER) == STARTER
    assert for_year(tmp_path, "Reception", STARTER) == STARTER
