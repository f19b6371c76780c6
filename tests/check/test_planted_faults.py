"""A fault of each rule, alone in a copy of the content, is reported alone, on its line and column, with a fix."""

from __future__ import annotations

from pathlib import Path

import pytest
from project import collection_with, problems_with, reference, text_of
from storymaths.check.echoes import without_echoes
from storymaths.check.rules import TABLE, check_parts
from storymaths.model.document import Document
from storymaths.model.problem import Problem
from storymaths.parse.collection import read_page
from yaml_files import read_yaml

LIFT = "books/cliff-house-lift"
BOOK, STORY, S2, H1 = (f"{LIFT}/{name}.md" for name in ("index", "story", "session-2", "home-1"))
PLANTED = read_yaml(Path(__file__).parent / "planted.yaml")
WITH_TESTS_OF_THEIR_OWN = [
    "books-out-of-order",
    "nothing-set-out",
    "together-too-long",
    "home-too-hard",
    "quotes-too-long",
    "file-unreadable",
    "file-name-unusable",
    "page-name-taken",
    "moved-page-broken",
    "objective-without-concept",
]
Planted = dict[str, str]


def place_of(text: str, words: str) -> tuple[int, int]:
    """Line and column, from 1, of the first time ``words`` stand in ``text``."""
    before = text[: text.index(words)]
    return before.count("\n") + 1, len(before) - before.rfind("\n")


def plant(planted: Planted) -> str:
    text = text_of(planted["path"])
    assert planted["old"] in text, f"the content has changed: {planted['old']!r} is no longer in {planted['path']}"
    return text.replace(planted["old"], planted["new"], 1)


def test_the_content_itself_has_no_problem() -> None:
    assert problems_with({}) == []


@pytest.mark.parametrize("planted", PLANTED, ids=lambda planted: planted["rule"])
def test_a_planted_fault_is_reported_alone_and_in_its_place(planted: Planted) -> None:
    text = plant(planted)
    (problem,) = reported_for(planted, text)
    assert problem.rule == planted["rule"]
    assert planted["says"] in problem.message
    assert problem.place.path == f"content/{planted['path']}"
    assert (problem.place.line, problem.place.column) == place_of(text, planted["at"])
    assert problem.fix


def reported_for(planted: Planted, text: str) -> list[Problem]:
    return sorted(without_echoes(problems_with({planted["path"]: text})))


def test_rules_of_a_part_find_in_it_alone_what_they_find_among_all() -> None:
    texts: dict[str, str] = {}
    for planted in (one for one in PLANTED if one["path"].endswith(".md")):
        path = planted["path"]
        text = (texts.get(path) or text_of(path)).replace(planted["old"], planted["new"], 1)
        if isinstance(read_page(f"content/{path}", text.encode(), reference().limits.files), Document):
            texts[path] = text
    whole = collection_with(texts)
    together = set(check_parts(whole))
    assert len({problem.rule for problem in together}) > 35
    assert {problem for part in whole.parts for problem in check_parts(whole.only([part]))} == together


def test_every_rule_has_a_planted_fault() -> None:
    planted = [planted["rule"] for planted in PLANTED] + WITH_TESTS_OF_THEIR_OWN
    assert sorted(planted) == sorted(module.RULE.name for module in TABLE)


def test_a_home_page_too_hard_to_read() -> None:
    hard = (
        "Subsequently endeavour to establish equivalence between the respective receptacles, notwithstanding "
        "considerable difficulties encountered in determining comparative magnitudes. "
    ) * 12
    text = text_of(H1).replace("Read pages 6 and 7 first. Join in when Worm calls.", hard)
    (problem,) = problems_with({H1: text})
    assert problem.rule == "home-too-hard"
    assert "the limit is 5" in problem.message
    assert problem.place.line == place_of(text, hard.strip()[:20])[0]


def test_one_hard_step_on_an_easy_home_page() -> None:
    hard = "Subsequently endeavour to establish equivalence between the respective receptacles."
    text = text_of(H1).replace("Take the friends out.", hard)
    (problem,) = problems_with({H1: text})
    assert problem.rule == "home-too-hard"
    assert problem.message.startswith('"Subsequently endeavour to establish')
    assert problem.place.line == place_of(text, hard)[0]


def test_more_than_may_be_quoted_from_a_book_in_copyright() -> None:
    book = text_of(BOOK).replace("rights: own\n", "rights: in-copyright\npublisher: Slipway Books\n")
    session = text_of(S2).replace("Ask for all six.", "Ask for all six.\n\n> " + "one two three " * 10)
    problems = problems_with({BOOK: book, S2: session}, removed=(STORY,))
    by_rule = [problem for problem in problems if problem.rule == "quotes-too-long"]
    (problem,) = by_rule
    assert "30 words of the book are quoted; the limit is 25" in problem.message
    assert (problem.place.path, problem.place.line) == (f"content/{S2}", place_of(session, "> one two three")[0])


def test_a_story_of_a_book_in_copyright_is_a_problem_of_rights() -> None:
    book = text_of(BOOK).replace("rights: own\n", "rights: in-copyright\npublisher: Slipway Books\n")
    (problem,) = (problem for problem in problems_with({BOOK: book}) if problem.place.path.endswith("story.md"))
    assert problem.rule == "rights-missing"
    assert problem.place.path == f"content/{LIFT}/story.md"


def test_ten_faults_in_one_run_are_all_reported() -> None:
    rules = [
        "objective-unknown", "concept-unknown", "theme-unknown", "word-beyond-year", "material-unknown",
        "apparatus-not-modelled", "number-beyond-year", "needs-forward", "page-outside-book", "field-unknown",
    ]  # fmt: skip
    text = text_of(S2)
    for planted in PLANTED:
        if planted["rule"] in rules:
            assert planted["old"] in text
            text = text.replace(planted["old"], planted["new"], 1)
    assert sorted(problem.rule for problem in problems_with({S2: text})) == sorted(rules)


def test_versions_told_twice_or_dated_backwards() -> None:
    path = "series/a-term-on-plover-quay.md"
    twice = text_of(path).replace('version: "1.1"', 'version: "1.0"')
    assert [problem.message for problem in problems_with({path: twice})] == ["Version 1.0 is told twice."]
    backwards = text_of(path).replace("2026-11-09", "2026-09-09")
    (problem,) = problems_with({path: backwards})
    assert problem.message == "Version 1.1 is dated before version 1.0."
    assert (problem.place.line, problem.place.column) == place_of(backwards, "2026-09-09")
