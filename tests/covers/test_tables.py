"""Coverage of a collection small enough to be worked out by hand: see the tables in ``mini_sites/three_small_books.py``."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import pytest
from mini_sites.three_small_books import MINI, a_session, bend, mini_reference, three_small_books
from storymaths.covers.needs import cares_of, needs_of
from storymaths.covers.path import SeriesPath, path_of
from storymaths.covers.shelves import year_shelves
from storymaths.covers.stages import balance_of, stages_of
from storymaths.covers.table import other_tables, year_table, year_tables
from storymaths.covers.taught import Coverage, SessionPage, coverage_of
from storymaths.covers.words import words_across, words_by_year
from storymaths.model.session import Session

REFERENCE = mini_reference()
COLLECTION = three_small_books()
Line = tuple[str, str, str, str | None]

# By hand: code → taught, taken up again, touched in a bend, and so on the whole.
WHOLE: dict[str, Line] = {
    "1A": ("bells 1", "boats 1, bones 1", "", "taught"),
    "1B": ("", "", "boats 1, boats 2", "bend"),
    "1C": ("", "", "", None),
    "2A": ("boats 1, boats 2", "", "", "taught"),
    "2B": ("bones 1", "", "bells 1", "taught"),
    "2C": ("boats 2, bones 1", "", "", "part"),
    "2D": ("", "", "", None),
    "3A": ("", "", "boats 1", "bend"),
}
SERIES: dict[str, Line] = {
    "1A": ("bells 1", "boats 1", "", "taught"),
    "1B": ("", "", "boats 1, boats 2", "bend"),
    "1C": ("", "", "", None),
    "2A": ("boats 1, boats 2", "", "", "taught"),
    "2B": ("", "", "bells 1", "bend"),
    "2C": ("boats 2", "", "", "part"),
    "2D": ("", "", "", None),
    "3A": ("", "", "boats 1", "bend"),
}


def both() -> SeriesPath:
    return path_of(COLLECTION.series["both"].fields, COLLECTION)


def told(pages: Sequence[SessionPage]) -> str:
    return ", ".join(f"{page.fields.book} {page.fields.number}" for page in pages)


def lines(coverage: Coverage) -> dict[str, Line]:
    return {
        row.objective.code: (told(row.taught), told(row.again), told(row.bend), row.how)
        for table in year_tables(coverage, REFERENCE, REFERENCE.years)
        for row in table.rows
    }


def test_the_whole_collection_is_the_table_worked_out_by_hand() -> None:
    assert lines(coverage_of(COLLECTION.of_kind(Session), REFERENCE)) == WHOLE


def test_the_series_is_the_table_worked_out_by_hand() -> None:
    assert lines(coverage_of(both().sessions, REFERENCE)) == SERIES


def test_counts_gaps_and_strands() -> None:
    coverage = coverage_of(COLLECTION.of_kind(Session), REFERENCE)
    one, two = (year_table(coverage, REFERENCE, MINI, year) for year in (1, 2))
    assert (one.counts["taught"], one.touched, [row.objective.code for row in one.gaps]) == (1, 1, ["1C"])
    assert (two.counts["taught"], two.counts["part"], two.touched) == (2, 1, 0)
    assert [row.objective.code for row in two.gaps] == ["2D"]
    assert [(name, [row.objective.code for row in part.rows]) for name, part in two.strands] == [
        ("Number", ["2A", "2B"]), ("Measure", ["2C", "2D"]),
    ]  # fmt: skip


def test_what_is_missing_of_an_objective_and_who_teaches_its_parts() -> None:
    coverage = coverage_of(COLLECTION.of_kind(Session), REFERENCE)
    assert [part.id for part in coverage.missing["mini", "2C"]] == ["wide"]
    by_part = {part: told(pages) for part, pages in coverage.parts["mini", "2C"].items()}
    assert by_part == {"long": "boats 2", "short": "boats 2, bones 1"}


def test_every_part_but_one_in_doubt_is_enough() -> None:
    pages = [
        a_session("boats", 8, 2, objectives={"mini": [{"2C": "wide"}]}),
        a_session("boats", 9, 2, objectives={"mini": [{"2C": ["long", "short"]}]}),
    ]
    assert coverage_of(pages, REFERENCE).how(("mini", "2C")) == "taught"  # type: ignore[arg-type]
    every = a_session("boats", 9, 2, objectives={"mini": [{"2C": "all"}]})
    assert coverage_of([every], REFERENCE).how(("mini", "2C")) == "taught"  # type: ignore[list-item]


def test_of_other_years_only_what_is_covered_is_told() -> None:
    (table,) = other_tables(coverage_of(both().sessions, REFERENCE), REFERENCE, (1, 2))
    assert (table.year, [row.objective.code for row in table.rows]) == (3, ["3A"])


def test_a_session_that_bends_to_two_years_with_one_objective_is_told_once() -> None:
    page = a_session("boats", 9, 2, bends={1: bend("1B"), 3: bend("1B")})
    assert len(coverage_of([page], REFERENCE).bent["mini", "1B"]) == 1  # type: ignore[list-item]


def test_shelves_by_hand() -> None:
    shelves = year_shelves(COLLECTION)
    two, one = shelves["mini", 2], shelves["mini", 1]
    assert (two.shelf.ways, two.shelf.minutes, [o.code for o in two.beyond]) == ((("boats", "bones"),), 125, ["2D"])
    assert (one.shelf.ways, one.shelf.minutes, [o.code for o in one.beyond]) == ((("bells",),), 40, ["1B", "1C"])
    assert [item.id for item in two.items] == ["2A", "2B", "2C long", "2C short"]
    assert [objective.code for objective in two.in_part] == ["2C"]
    assert shelves["mini", 3].books == ()


def test_the_path_of_a_series() -> None:
    path = both()
    assert told(path.sessions) == "bells 1, boats 1, boats 2"
    assert ([run.minutes for run in path.runs], path.minutes) == ([40, 95], 135)


@pytest.mark.parametrize(("children", "counters", "paper"), [(30, 170, 36), (1, 30, 2)])
def test_what_comes_back_is_had_once_and_what_is_used_up_each_time(children: int, counters: int, paper: int) -> None:
    needs = {need.material.id: need for need in needs_of(both(), REFERENCE, children)}
    assert {item: need.enough for item, need in needs.items()} == {
        "counter": counters, "plain-paper": paper, "picture-book": 2,
    }  # fmt: skip
    assert needs["picture-book"].sessions == 3


def test_cautions_stand_once_with_every_sessions_note() -> None:
    (care,) = cares_of(both().sessions, REFERENCE)
    assert care.caution.id == "small-parts"
    assert [(told([page]), note) for page, note in care.notes] == [
        ("bells 1", "Count them back."), ("boats 1", "Keep them off the floor."),
    ]  # fmt: skip


def test_words_across_the_series() -> None:
    across = words_across(both().sessions, REFERENCE, (1, 2))
    assert (across.new, across.known_before, across.only_once) == (("sum", "share", "row"), ("count",), ("row",))
    assert not {"sum", "share", "row"} & {word.word for word in across.not_met}
    for year in words_by_year(both().sessions, REFERENCE):
        bank = {word.word for word in REFERENCE.words.values() if word.year == year.year and not word.everyday}
        assert {word.word for word in (*year.new, *year.again, *year.not_met)} == bank


def test_stages_are_read_from_the_authors_words() -> None:
    one, two, three = (stages_of(page, REFERENCE) for page in both().sessions)
    assert ([thing.id for thing in one.things], one.signs, one.written) == (
        ["counter", "plain-paper"],
        ("+", "="),
        "signs",
    )
    assert (two.things, two.signs, two.written) == ((), (), "numbers")
    assert three.written == "words"
    balance = balance_of([one, two, three])
    assert (balance.sessions, balance.with_things, dict(balance.written)) == (
        3,
        1,
        {"signs": 1, "numbers": 1, "words": 1},
    )


def test_versions_are_in_order_whatever_the_order_they_are_listed_in() -> None:
    series = COLLECTION.series["both"].fields
    assert [change.version for change in series.history] == ["1.0", "1.9", "1.10"]
    assert series.years == (1, 2)


@pytest.mark.parametrize(
    "block",
    [
        "```maths\nkind: chart\ntitle: A wall\n```",
        "~~~ maths\ntitle: From 3 ~ 5\nkind : 'chart'\n~~~",
        '```maths\ntitle: "`Tens`"\ndata:\n  deep: 1\n"kind": chart\n```',
    ],
)
def test_kinds_are_found_however_they_are_written(block: str) -> None:
    page = replace(both().sessions[0], body=f"First.\n\n{block}\n")
    assert stages_of(page, REFERENCE).kinds == ("chart",)


def test_a_block_without_a_kind_is_read_past_at_once() -> None:
    # Each line could once be read in two ways, and forty lines took for ever.
    page = replace(both().sessions[0], body="```maths\ntitle: ~\n" + "    one: 1\n" * 400 + "```\n")
    assert stages_of(page, REFERENCE).kinds == ()
