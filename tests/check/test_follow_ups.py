"""One fault is one problem: nothing is said to follow from it that is not so."""

from __future__ import annotations

import re

import pytest
from project import collection, collection_with, problems_with, reference, text_of
from storymaths.check.echoes import without_echoes
from storymaths.check.rules import check_all
from storymaths.model.address import source_of
from storymaths.model.session import Session
from storymaths.naming.print_names import print_names

SESSIONS = [page.source for page in collection().of_kind(Session)]


@pytest.mark.parametrize("source", SESSIONS)
def test_a_stop_without_an_answer_is_one_problem(source: str) -> None:
    text = text_of(source)
    without = re.sub(r"^ +hear:(?:.*\n)(?: {8,}- .*\n)*", "", text, count=1, flags=re.MULTILINE)
    assert without != text
    problems = problems_with({source: without})
    assert [problem.rule for problem in problems] == ["field-missing"], [str(problem) for problem in problems]


def test_a_list_that_holds_something_is_not_too_short() -> None:
    source = SESSIONS[0]
    text = text_of(source).replace("reads:", "reads: []\nunread:", 1)
    messages = [problem.message for problem in problems_with({source: text})]
    assert any('"reads" needs at least one item' in message for message in messages)


def test_half_a_sentence_is_not_called_a_field() -> None:
    source = "books/cliff-house-lift/session-2.md"
    text = text_of(source)
    new = "{item: balance-mat, count: 1, per: pair, note: A frame, which holds ten.}"
    (problem,) = problems_with({source: text.replace("{item: balance-mat, count: 1, per: pair}", new)})
    assert "because of the comma" in problem.message


def test_no_message_shows_a_pattern() -> None:
    source = "books/cliff-house-lift/session-2.md"
    (problem,) = problems_with({source: text_of(source).replace("item: sign-card", "item: sign(card)")})
    assert problem.message.endswith(
        'should be a name in small letters and digits, with hyphens between words, such as "sign-card".'
    )
    (problem,) = problems_with({source: text_of(source).replace("item: sign-card", "item: sign card")})
    assert 'Did you mean "sign-card"?' in problem.message


def test_a_note_that_was_proposed_and_not_written_is_told() -> None:
    """A caution's note that still says what is to be written would stand in front of a class as if it had been."""
    path = "books/cliff-house-lift/session-1.md"
    note = reference().cautions["small-parts"].still_to_write
    changed, many = re.subn(r"(risk: small-parts\n\s+note: ).*", rf"\g<1>{note}", text_of(path), count=1)
    assert many == 1
    assert "starter-unfilled" in {problem.rule for problem in problems_with({path: changed})}


@pytest.mark.parametrize(
    "slip",
    [("rights: own", "rights: mine"), ("kind: book", "kind: boook"), ("title:", "titel:"), ("---\nkind", "kind")],
)
def test_a_record_that_cannot_be_read_is_told_once_whatever_names_its_facts(slip: tuple[str, str]) -> None:
    record, session, home = (f"books/cliff-house-lift/{name}.md" for name in ("index", "session-2", "home-1"))
    named = text_of(session).replace("Read page 8 and talk", "Camel is [[camel.mass]]. Read page 8 and talk", 1)
    ways = text_of(home).rstrip() + "\n\nThere are [[session-2/one-with-two: count]] ways.\n"
    fixed = text_of(home).replace("whole: 9", 'whole: "[[camel.mass: number]]"', 1)
    for texts in ({session: named}, {session: named, home: ways}, {session: named, home: fixed}):
        whole = collection_with({record: text_of(record).replace(*slip, 1), **texts})
        problems = without_echoes(check_all(print_names(whole)))
        assert [source_of(problem.place.path) for problem in problems] == [record], problems


@pytest.mark.parametrize("risk", ["small-parts", "trapped-fingers"])
def test_the_note_that_a_fix_gives_can_be_pasted_and_is_then_still_to_be_written(risk: str) -> None:
    source = "books/cliff-house-lift/session-2.md"
    found = re.search(rf"  - risk: {risk}\n    note: .*\n", text_of(source))
    assert found
    (problem,) = problems_with({source: text_of(source).replace(found[0], "")})
    item = re.search(r"- \{.*?\}", problem.fix)
    assert item
    pasted = problems_with({source: text_of(source).replace(found[0], f"  {item[0]}\n")})
    assert [one.rule for one in pasted] == ["starter-unfilled"]


def test_a_name_that_is_wrong_is_told_beside_whatever_is_wrong_with_the_record() -> None:
    record, session = "books/cliff-house-lift/index.md", "books/cliff-house-lift/session-2.md"
    named = text_of(session).replace("Read page 8 and talk", "Camel is [[camel.mas]]. Read page 8 and talk", 1)
    linked = text_of(record).rstrip() + "\n\n[See](nowhere.md)\n"
    whole = collection_with({record: linked, session: named})
    problems = without_echoes(check_all(print_names(whole)))
    assert {problem.rule for problem in problems} == {"link-broken", "name-unknown"}
