"""The command ``ideas``: what it prints, and what it says to a slip."""

from __future__ import annotations

import json

from command import storymaths


def test_it_prints_the_best_ideas_and_what_nothing_carries() -> None:
    done = storymaths("ideas", "cliff-house-lift", "--first", "2", "--series", "two-years-together")
    assert done.returncode == 0
    assert done.stdout.startswith("The Cliff House Lift, Year 2: ")
    assert "Gaps looked at: two-years-together." in done.stdout
    assert done.stdout.count("```maths\n") == 2
    assert "Nothing in this book can carry, for Year 2:" in done.stdout


def test_an_objective_brings_its_year() -> None:
    done = storymaths("ideas", "cliff-house-lift", "--objective", "1c1", "--format", "json")
    record = json.loads(done.stdout)
    assert record["year"] == 1
    assert record["objective"] == ["england-content-domain", "1C1"]
    assert record["ideas"]


def test_slips_are_told_with_what_was_likely_meant() -> None:
    told = {
        storymaths("ideas", *words).stderr.strip().splitlines()[-1]
        for words in (
            ("cliff-house-lifts",), ("ferry-fare", "--objective", "2C44"), ("ferry-fare", "--series", "two-year-together"),
            ("ferry-fare", "--year", "1", "--objective", "2C4"), ("ferry-fare", "--year", "7"), ("ferry-fare", "--first", "0"),
        )
    }  # fmt: skip
    assert {line.rpartition("storymaths ideas: ")[2] for line in told} == {
        'There is no book "cliff-house-lifts" in content/books that can be read. Did you mean "cliff-house-lift"?',
        '"2C44" is not the code of an objective. Did you mean "2C4"?',
        'There is no series "two-year-together" in content/series. Did you mean "two-years-together"?',
        "2C4 is an objective of Year 2: leave out --year, or give that one.",
        "error: argument --year: 7 is not Reception, 1, 2, 3, 4, 5 or 6",
        "error: argument --first: 0 is not a number of ideas such as 10",
    }
