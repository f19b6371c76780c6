"""An activity worked out from its text, and the activities of pages: places, rules, caching."""

from __future__ import annotations

import json
from dataclasses import replace

import pytest
from activities.contexts import the_reference
from hypothesis import given
from hypothesis import strategies as st
from project import all_activities, collection, text_of
from storymaths.activities.balance import KIND as BALANCE
from storymaths.activities.memory import Memory
from storymaths.activities.on_pages import activities_of, check_activities, work_out_pages
from storymaths.activities.table import KINDS
from storymaths.activities.tune import tune
from storymaths.activities.work_out import WorkedOut, work_out
from storymaths.model.collection import Collection
from storymaths.model.document import Document
from storymaths.model.problem import Problem
from storymaths.parse.document import parse_document

SESSION = "books/twenty-lamps/session-1.md"
BOOK = "twenty-lamps"


def worked(text: str, line: int = 1, year: int = 2, with_book: bool = False) -> WorkedOut:
    book = collection().books[BOOK].fields if with_book else None
    return work_out(text, "content/x.md", line, book, year, the_reference(), folder=f"books/{BOOK}")


def shown(problems: tuple[Problem, ...] | list[Problem]) -> list[tuple[int, int, str]]:
    return [(problem.place.line, problem.place.column, problem.rule) for problem in problems]


def balance(*lines: str) -> str:
    return "\n".join(("kind: balance", "title: A trial", *lines))


@pytest.mark.parametrize("name", list(KINDS))
def test_every_example_works_out_without_a_problem(name: str) -> None:
    kind = KINDS[name]
    done = worked(kind.example)
    assert done.problems == ()
    assert done.solution is not None
    assert 1 <= len(done.solution.answers) <= 12
    assert set(done.versions) == set(done.fields.years if done.fields else ())


def test_problems_stand_where_they_are_on_the_page() -> None:
    text = balance("fact: masss", "cast: {gull: {mass: 2}, crab: {mass: 3}}")
    assert shown(worked(text, line=40).problems) == [(42, 7, "activity-fact-missing")]
    assert worked(text, line=40).problems[0].message == ('Nobody in the cast has a fact "masss". Did you mean "mass"?')


@pytest.mark.parametrize(
    ("lines", "year", "expected"),
    [
        (["cast: {a: {mass: 4}, b: {mass: 9}}"], 2, [(1, 7, "activity-no-answer")]),
        (["cast: {a: {mass: 4}, b: {mass: 9}}", "answers: 0"], 2, []),
        (["cast: {a: {mass: 4}, b: {mass: 4}}", "answers: 2"], 2, [(4, 10, "activity-claim-wrong")]),
        (["cast: {a: {mass: 40}, b: {mass: 40}, c: {mass: 80}}"], 1, [(1, 7, "activity-beyond-year")]),
        (["year: 1", "cast: {a: {mass: 40}, b: {mass: 40}}"], 2, []),
        (["year: 1", "cast: {a: {mass: 140}, b: {mass: 140}}"], 4, [(3, 7, "activity-beyond-year")]),
        (
            ["at_most: 1", "cast: {a: {mass: 4}, b: {mass: 4}, c: {mass: 4}}"],
            2,
            [(3, 10, "activity-too-many-answers")],
        ),
        (
            ["cast: {a: {mass: 4}, b: {}, c: {}}"],
            2,
            [(3, 25, "activity-fact-missing"), (3, 32, "activity-fact-missing")],
        ),
        (["cast: [gull]"], 2, [(3, 7, "activity-fact-missing")]),
        (
            ["cast: {a: {mass: 4}, b: {mass: 4}, c: {mass: 8}}", "years: {1: {largest: 1}}"],
            2,
            [(4, 12, "activity-no-version")],
        ),
        (
            ["cast: {a: {mass: 4}, b: {mass: 4}}", "years: {1: {answers: [a = c]}}"],
            2,
            [(4, 22, "activity-claim-wrong")],
        ),
        (["cast: {a: {mass: 4}, b: {mass: 4}}", "start: {left: [a], right: [b]}"], 2, [(4, 8, "activity-cannot-be")]),
        (["cast: {a: {mass: 0x" + "f" * 5000 + "}, b: {mass: 4}}"], 2, [(3, 18, "activity-cannot-be")]),
    ],
)
def test_each_rule_at_its_place(lines: list[str], year: int, expected: list[tuple[int, int, str]]) -> None:
    assert shown(worked(balance(*lines), year=year).problems) == expected


def test_several_problems_at_once() -> None:
    text = balance("cast: {a: {mass: 40}, b: {mass: 40}, c: {mass: 80}}", "answers: 5", "years: {Reception: {}}")
    assert [rule for _, _, rule in shown(worked(text, year=1).problems)] == [
        "activity-beyond-year",
        "activity-claim-wrong",
        "activity-no-version",
    ]


def test_the_cast_of_a_book() -> None:
    done = worked(balance("fact: legs", "cast: [ned, skerry, bramble, mab]"), with_book=True)
    assert done.problems == ()
    assert done.context is not None
    assert [character.name for character in done.context.characters] == ["Ned", "Skerry", "Old Bramble", "Mab"]
    assert done.context.characters[0].picture == "books/twenty-lamps/cast/ned.svg"
    assert done.solution is not None
    assert done.solution.answers[-1].worked == "10 = 2 + 4 + 4."
    everybody = worked(balance("fact: legs", "cast: all", "at_most: 500"), with_book=True)
    assert everybody.context is not None
    assert len(everybody.context.characters) == len(collection().books[BOOK].fields.cast)
    unknown = worked(balance("fact: legs", "cast: [ned, skery, ned]"), with_book=True).problems
    assert shown(unknown) == [(4, 13, "activity-fact-missing"), (4, 20, "activity-cannot-be")]
    assert 'Did you mean "skerry"?' in unknown[0].message


def test_the_authors_own_words_for_the_task() -> None:
    done = worked(BALANCE.example + "ask: Who can ride with whom?\n")
    assert done.solution is not None
    assert done.solution.task.ask == "Who can ride with whom?"
    assert all(version.solution.task.ask == "Who can ride with whom?" for version in done.versions.values())


def test_a_rebuild_solves_nothing_again(monkeypatch: pytest.MonkeyPatch) -> None:
    memory = Memory[WorkedOut]()
    first = work_out(BALANCE.example, "content/x.md", 5, None, 2, the_reference(), memory=memory)

    def not_again(*_: object) -> None:
        raise AssertionError("solved again")

    monkeypatch.setattr(type(BALANCE), "solve", not_again)
    again = work_out(BALANCE.example, "content/x.md", 50, None, 2, the_reference(), memory=Memory(memory))
    assert again.solution is first.solution


def test_a_kind_that_fails_is_a_problem_and_no_traceback(monkeypatch: pytest.MonkeyPatch) -> None:
    def fails(*_: object) -> None:
        raise ZeroDivisionError("nought")

    monkeypatch.setattr(type(BALANCE), "solve", fails)
    problems = worked(balance("cast: {gull: {mass: 7}, crab: {mass: 8}}")).problems
    assert [problem.rule for problem in problems] == ["activity-cannot-be"]
    assert "ZeroDivisionError: nought" in problems[0].message


@pytest.mark.parametrize(
    ("text", "says"),
    [
        (
            "kind: measure\ntitle: T\nfind: read\nends: [0, 100]\nparts: 20\nunit: cm\npointers: [35]\nyears: {1: {ends: [0, 0]}}",
            "from a smaller number to a larger",
        ),
        ("kind: compare\ntitle: T\nfact: mass\ncast: {a: {mass: 2}, b: {mass: 3, ' ': 4}}", "is empty"),
        ("kind: compare\ntitle: T\nnull: 3\nstatements: [2 < 3]", "null"),
    ],
)
def test_what_no_author_means_is_told_in_words(text: str, says: str) -> None:
    problems = work_out(text, "content/a.md", 1, None, 2, the_reference()).problems
    assert [problem for problem in problems if says in problem.message], problems


@pytest.mark.parametrize("text", ["kind: fraction\ntitle: T", "kind: number-sentence\ntitle: T"])
def test_half_an_activity_cannot_be_tuned_and_says_what_it_lacks(text: str) -> None:
    assert tune(text, 2, (1, 5), None, the_reference()).problems


@given(
    st.dictionaries(
        st.sampled_from("kind title fact cast teams given start answers years at_most wished statements clues".split()),
        st.recursive(
            st.one_of(
                st.none(), st.booleans(), st.integers(-(10**9), 10**9), st.sampled_from(["balance", "mass", "a", "all"])
            ),
            lambda inner: st.one_of(
                st.lists(inner, max_size=3),
                st.dictionaries(st.sampled_from(["a", "b", "mass", "side", "left"]), inner, max_size=3),
            ),
            max_leaves=8,
        ),
    ),
    st.sampled_from(list(KINDS)),
)
def test_no_data_breaks_it(data: dict[str, object], kind: str) -> None:
    done = worked(json.dumps({"kind": kind, "title": "x", **data}))
    assert done.problems or done.solution


# On pages.


def page(body: str, source: str = SESSION) -> Document:  # type: ignore[type-arg]
    front = text_of(source).split("\n---\n", 1)[0]
    made = parse_document(f"content/{source}", f"{front}\n---\n{body}")
    assert isinstance(made, Document)
    return made


def with_page(made: Document) -> Collection:  # type: ignore[type-arg]
    others = tuple(document for document in collection().documents if document.path != made.path)
    return replace(collection(), documents=(*others, made))


LEGS = "kind: balance\ntitle: Legs\nfact: legs\ncast: [ned, skerry, bramble, mab]\n"


def test_blocks_are_found_with_their_lines_and_worked_out_with_their_book() -> None:
    body = f"## Share\n\nText.\n\n```maths\n{LEGS}```\n\n- In a list:\n\n    ~~~ maths\n    kind: balence\n    ~~~\n\n```\n```maths\n```\n"
    made = page(body)
    found = activities_of(made, with_page(made))
    assert len(found) == 2
    first, second = found
    assert first.fence.text == LEGS
    assert first.place.line == made.body_line + 4
    assert first.worked.problems == ()
    assert first.worked.year == 2
    assert shown(second.worked.problems) == [(made.body_line + 14, 11, "activity-broken")]


def test_a_block_that_is_never_closed() -> None:
    made = page("```maths\nkind: balance\n")
    assert shown(check_activities(work_out_pages(with_page(made)))) == [(made.body_line, 1, "activity-broken")]


def test_the_same_activity_twice_on_a_page() -> None:
    again = LEGS.replace("Legs", "Legs again")
    made = page(f"```maths\n{LEGS}```\n\n```maths\n{again}```\n\n```maths\n{again}teams: all\n```\n")
    problems = [p for p in check_activities(work_out_pages(with_page(made))) if p.place.path == made.path]
    assert shown(problems) == [(made.body_line + 7, 1, "activity-twice")]
    assert f"on line {made.body_line}" in problems[0].message


def test_the_collections_own_activities_have_no_problem() -> None:
    assert check_activities(all_activities()) == []
