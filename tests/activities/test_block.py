"""Reading one activity: every problem at once, each at its line and column, in words a teacher can use."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from storymaths.activities.block import Block, read_block
from storymaths.activities.table import KINDS


def faults(text: str) -> list[tuple[int, int, str]]:
    read = read_block(text)
    assert not isinstance(read, Block)
    assert {problem.rule for problem in read} == {"activity-broken"}
    return [(problem.place.line, problem.place.column, problem.message) for problem in read]


@pytest.mark.parametrize("kind", KINDS.values(), ids=list(KINDS))
def test_every_example_can_be_read(kind: object) -> None:
    read = read_block(kind.example)  # type: ignore[attr-defined]
    assert isinstance(read, Block)
    assert read.kind is kind


def test_a_kind_and_a_key_that_are_not_known_are_met_with_a_suggestion() -> None:
    assert faults("kind: balence\ntitle: x") == [(1, 7, '"balence" is not a kind of activity. Did you mean "balance"?')]
    assert faults("kind: balance\ntitle: x\nteems: any") == [
        (3, 1, '"teems" is not a field of balance. Did you mean "teams"?')
    ]
    assert faults("kind: balance\ntitle: x\ngiven: {sde: [a]}") == [
        (3, 9, '"sde" is not a field of balance. Did you mean "side"?')
    ]
    assert faults("kind: share\ntitle: x\ntotl: 12") == [
        (3, 1, '"totl" is not a field of share. Did you mean "total"?')
    ]
    assert faults("title: x") == [(1, 1, "The activity does not say of what kind it is.")]


def test_all_faults_at_once_and_one_for_each_value() -> None:
    text = "kind: balance\ntitle: x\nteams: fve\ncast: {otter: {mass: 6.5}, hare: 3}\nyear: 9\ntitle: y"
    assert sorted(faults(text)) == [
        (3, 8, "\"teams\" is \"fve\"; it should be one of: 'any' or 'all' or a whole number."),
        (4, 22, '"cast.otter.mass" is "6.5"; it should be true or false or a whole number or words.'),
        (4, 34, '"cast.hare" is "3"; it should be fields, each with its value.'),
        (5, 7, '"year" is "9": a year is Reception, 1, 2, 3, 4, 5 or 6.'),
        (6, 1, '"title" is already given above.'),
    ]


@pytest.mark.parametrize(
    ("text", "place"),
    [
        ("", (1, 1)),
        ("- a\n- b", (1, 1)),
        ("kind: balance\ntitle: x: y", (2, 9)),
        ("\tkind: balance", (1, 1)),
        ("kind: balance\ntitle: &x y\nask: *x", (3, 6)),
        ("kind: balance\ncast: &x [*x]", (2, 11)),
        ("[" * 500, (1, 13)),
        ("[" * 5000, (1, 1001)),
        ("kind: balance\ntitle: 2027-02-30", (2, 8)),
        ("kind: balance\ntitle: x\n0[: y", (3, 1)),
        ("kind: balance\ntitle: x\ncast: {a: {mass[kg]: 3}}", (3, 16)),
        ("x" * 30_000, (1, 1)),
    ],
)
def test_text_that_cannot_be_read(text: str, place: tuple[int, int]) -> None:
    assert faults(text)[0][:2] == place


@given(st.text(max_size=200))
def test_no_text_breaks_the_reader(text: str) -> None:
    read_block(text)


@given(st.text(alphabet="kind:balance\n {}[]-&*!|>'\"#,0123.", max_size=120))
def test_no_yaml_breaks_the_reader(text: str) -> None:
    read_block("kind: balance\ntitle: x\n" + text)
