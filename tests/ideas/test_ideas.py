"""Ideas for a book: each can be put into a session as it stands, and says truly what it practises and why it is there."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from ideas.books import STRANGER, ideas_for, stranger
from project import activities_on, collection, problems_with, reference, text_of
from storymaths.activities.on_pages import check_activities
from storymaths.activities.work_out import work_out
from storymaths.covers.practised import practised_in
from storymaths.ideas.find import find_ideas
from storymaths.ideas.reason import FewWays, LikeOneAbove, Noted, NumbersChanged, NumbersKept, StillMissed
from storymaths.ideas.report import as_record, as_text
from storymaths.model.document import Document
from storymaths.parse.collection import read_page

CASES = [
    ("cliff-house-lift", 2),
    ("cliff-house-lift", 3),
    ("ferry-fare", 0),
    ("ferry-fare", 1),
    (STRANGER, 2),
    (STRANGER, 5),
]
SESSION = "books/cliff-house-lift/session-2.md"


@pytest.mark.parametrize(("book", "year"), CASES)
def test_the_block_of_every_idea_works_out_with_the_answers_it_says(book: str, year: int) -> None:
    whole = stranger() if book == STRANGER else collection()
    ideas = ideas_for(book, year)
    assert ideas.ideas
    for idea in ideas.ideas[:20]:
        worked = work_out(idea.block, "", 1, whole.books[book].fields, year, reference(), folder=f"books/{book}")
        assert worked.problems == (), idea.block
        assert worked.solution is not None
        assert tuple(answer.says for answer in worked.solution.answers) == idea.answers
        assert 0 < len(idea.answers) == idea.hardness.answers <= 8
        assert worked.solution.difficulty == idea.hardness.difficulty
        surely = {one.objective.code for one in practised_in(worked, reference())}
        assert surely <= {one.code for one in idea.practises}
        assert {one.code for one in idea.practises if one.parts} == surely


@pytest.mark.parametrize(("book", "year"), CASES)
def test_ideas_practise_objectives_of_their_year_and_the_rest_is_said_not_to_be_carried(book: str, year: int) -> None:
    ideas = ideas_for(book, year)
    carried = {(one.framework, one.code) for idea in ideas.ideas for one in idea.practises}
    left = {(one.framework, one.code) for one in ideas.not_carried}
    of_year = {key for key, one in reference().objectives.items() if one.year == year}
    assert carried | left <= of_year
    assert carried | left == of_year or ideas.had, "what its pages have carries the rest"
    assert not carried & left
    assert len({idea.title for idea in ideas.ideas}) == len(ideas.ideas)


def test_ideas_stand_in_a_session_as_they_are() -> None:
    """The first ten of a book, in a session of it: nothing is wrong with the page that was not wrong before."""
    fenced = "\n".join(idea.fenced for idea in ideas_for("cliff-house-lift", 2).ideas[:10])
    text = f"{text_of(SESSION)}\n\n{fenced}"
    page = read_page(f"content/{SESSION}", text.encode(), reference().limits.files)
    assert isinstance(page, Document)
    activities = activities_on(page)
    assert len(activities) >= 10
    assert check_activities({page.path: activities}) == []
    assert [str(one) for one in problems_with({SESSION: text})] == []


def test_what_a_page_of_the_book_sets_already_is_not_proposed_again() -> None:
    before = ideas_for("ferry-fare", 1)
    source = "books/ferry-fare/session-3.md"
    text = f"{text_of(source)}\n\n{before.ideas[0].fenced}"
    page = read_page(f"content/{source}", text.encode(), reference().limits.files)
    assert isinstance(page, Document)
    others = tuple(one for one in collection().documents if one.path != page.path)
    after = find_ideas(replace(collection(), documents=(*others, page)), "ferry-fare", 1)
    assert after.had == before.had + 1
    assert before.ideas[0].title not in {idea.title for idea in after.ideas}
    assert f"have already is left out: {after.had}." in as_text(after, reference(), 3)


def test_what_ranks_higher_weighs_more_with_what_stands_above_it() -> None:
    for book, year in CASES:
        weights = [idea.weight for idea in ideas_for(book, year).ideas]
        assert weights == sorted(weights, reverse=True), (book, year)


def test_reasons_say_what_is_so() -> None:
    for book, year in CASES:
        above: list[str] = []
        whole = stranger() if book == STRANGER else collection()
        noted = {concept for note in whole.books[book].fields.maths_on_pages for concept in note.concepts}
        for idea in ideas_for(book, year).ideas:
            kinds = [type(reason) for reason in idea.reasons]
            assert (NumbersChanged in kinds) == bool(idea.changes)
            assert not {NumbersChanged, NumbersKept} <= set(kinds)
            assert all(reason.ways == len(idea.answers) for reason in idea.reasons if isinstance(reason, FewWays))
            assert {reason.concept for reason in idea.reasons if isinstance(reason, Noted)} <= noted & set(
                idea.concepts
            )
            again = [reason.times for reason in idea.reasons if isinstance(reason, LikeOneAbove)]
            assert again in ([], [above.count(idea.kind)])
            above.append(idea.kind)


def test_changed_numbers_keep_the_order_of_the_story() -> None:
    changed = [idea for idea in ideas_for("cliff-house-lift", 3).ideas if idea.changes]
    assert changed
    for idea in changed:
        by_book = sorted(idea.changes, key=lambda change: change.book)
        assert [change.idea for change in by_book] == sorted(change.idea for change in idea.changes)


def test_what_a_series_misses_ranks_higher() -> None:
    """Sessions of the series teach 2C3; those of no series teach 2S1."""
    missed = {
        reason.code
        for idea in ideas_for("cliff-house-lift", 2).ideas
        for reason in idea.reasons
        if isinstance(reason, StillMissed)
    }
    assert "2S1" in missed
    assert "2M1" not in {
        reason.code
        for idea in ideas_for(STRANGER, 2).ideas
        for reason in idea.reasons
        if isinstance(reason, StillMissed)
    }
    assert ideas_for("cliff-house-lift", 2).series == tuple(
        name for name, page in collection().series.items() if "cliff-house-lift" in page.fields.books
    )


def test_an_objective_can_be_asked_for_alone() -> None:
    key = ("england-content-domain", "2C3")
    ideas = find_ideas(collection(), "cliff-house-lift", 2, key)
    assert ideas.ideas
    assert all("2C3" in {one.code for one in idea.practises} for idea in ideas.ideas)
    assert ideas.not_carried == ()


def test_nothing_to_carry_it_is_said_and_why() -> None:
    left = {one.code: one for one in ideas_for("cliff-house-lift", 2).not_carried}
    assert left["2M4a"].why == "nothing to feed it"
    assert left["2M4a"].kinds == ("clock",)
    assert left["2G3"].why == "no kind"
    told = as_text(find_ideas(collection(), "cliff-house-lift", 2, ("england-content-domain", "2M4a")), reference(), 10)
    assert told == (
        "The Cliff House Lift, Year 2: 0 ideas for 2M4a. Gaps looked at: a-term-on-plover-quay, two-years-together.\n\n"
        "Nothing in this book can carry, for Year 2:\n  National curriculum\n    2M4a     Reads, writes and draws clock times to "
        "five minutes and quarter hours: it takes two clock times or more."
    )


def test_the_same_book_gives_the_same_ideas() -> None:
    assert find_ideas(collection(), "ferry-fare", 1) == ideas_for("ferry-fare", 1)


def test_ideas_are_plain_data_for_other_programs() -> None:
    record = as_record(ideas_for(STRANGER, 2), reference(), 3)
    ideas = record["ideas"]
    assert isinstance(ideas, list)
    assert len(ideas) == 3
    first = ideas[0]
    assert isinstance(first, dict)
    assert str(first["fenced"]).startswith("```maths\nkind: ")
    assert {"kind", "practises", "answers", "hardness", "uses", "changes", "reasons", "weight"} <= first.keys()
    assert re.search(r"the notes see .* on pages", str(first["reasons"]))


def test_a_strangers_book_gives_what_one_would_teach() -> None:
    """Read by eye as a teacher would: what a change here brings is to be read aloud before it is accepted."""
    told = [(idea.kind, idea.ask) for idea in ideas_for(STRANGER, 2).ideas[:10]]
    assert told == [
        ("balance", "Two on each side. Which sides have the same number of jars? Find every way."),
        ("compare", "Compare everybody’s jars. Which sign belongs between the two sides: <, = or >?"),
        ("share", "Put Auntie Bo’s 8 jars into equal groups, with more than one in each. Find every way."),
        ("money", "It costs 5 pence, and you pay with 10 pence. What is the change?"),
        ("sequence", "Each one costs 5 pence. Count on in fives. Which numbers are missing?"),
        (
            "number-sentence",
            "There is one on the left of each line. Which two together have as many jars? Find every way.",
        ),
        ("chart", "The block diagram shows everybody’s jars. Answer the questions."),
        ("fraction", "Whose jars can be shared into 2 equal parts, with none left over?"),
        ("balance", "Auntie Bo has 8 jars. Which of the others have as many between them? Find every way."),
        ("order", "Put them in order, fewest jars first."),
    ]
