"""The class screen's boards: what they accept is what the activities' solutions found, and all of it can be placed."""

from __future__ import annotations

import pytest
from project import collection, reference
from storymaths.activities.on_pages import activities_of
from storymaths.activities.table import KINDS
from storymaths.activities.work_out import WorkedOut, work_out
from storymaths.publish.gallery import examples_of
from storymaths.render.screens.board import Board, Place, key_of, placings
from storymaths.render.screens.pieces import card_id
from storymaths.render.screens.table import PLAYED, boards_of

ON_PAGES = [
    pytest.param(found.worked, id=f"{page.path}:{found.place.line}")
    for page in collection().documents
    for found in activities_of(page, collection())
    if found.worked.kind and found.worked.kind.name in PLAYED
]
EXAMPLES = [pytest.param(examples_of(KINDS[name], reference())[0][1], id=name) for name in PLAYED]


def by_itself(board: Board) -> None:
    """Every accepted placing can be made: enough copies, room in each place, and only what a place takes."""
    pieces = {piece.id: piece for piece in board.pieces}
    places = {place.id: place for place in board.places}
    assert len(pieces) == len(board.pieces), "two pieces with one id"
    for _, placing in placings(board):
        for place, standing in placing.items():
            holds = places[place].holds
            assert holds is None or len(standing) <= holds
            assert all(places[place].takes in ("", pieces[one].sort) for one in standing)
        used = [one for standing in placing.values() for one in standing]
        for one in set(used):
            copies = pieces[one].copies
            assert copies is None or used.count(one) <= copies, one
        if board.empty_matters:
            assert key_of(board.places, placing) in board.answers


@pytest.mark.parametrize("worked", [*EXAMPLES, *ON_PAGES])
def test_every_answer_found_can_be_placed(worked: WorkedOut) -> None:
    assert worked.solution is not None
    boards = boards_of(worked)
    assert boards, "nothing to play"
    for board in boards:
        by_itself(board)
    # Boards that ask one thing each have an answer each; those that ask for every way have them all.
    told = sum(board.count for board in boards)
    assert told in (1, len(worked.solution.answers))


def test_a_balance_accepts_either_way_round_as_one_answer() -> None:
    worked = examples_of(KINDS["balance"], reference())[0][1]
    (board,) = boards_of(worked)
    assert board.answers["crab,gull|puffin"] == board.answers["puffin|crab,gull"] == 0
    assert board.count == 4


def test_missing_digits_have_a_place_each() -> None:
    asked = "kind: number-sentence\ntitle: A trial\nsentences: 7?8 − 16? = 546"
    (board,) = boards_of(work_out(asked, "here", 1, None, 4, reference()))
    by_itself(board)
    assert board.between == ("7", "8 − 16", " = 546")
    assert board.answers == {"card-0|card-2": 0}


def test_an_order_keeps_its_order_and_ties_share_a_place() -> None:
    text = "kind: order\ntitle: Ties\nfact: mass\ncast: {gull: {mass: 2}, crab: {mass: 3}, seal: {mass: 2}}\n"
    (board,) = boards_of(work_out(text, "here", 1, None, 2, reference()))
    assert list(board.answers) == ["gull,seal|crab"]
    assert not board.empty_matters


@pytest.mark.parametrize("name", sorted(set(KINDS) - set(PLAYED)))
def test_a_kind_not_played_has_no_boards(name: str) -> None:
    assert boards_of(examples_of(KINDS[name], reference())[0][1]) == []


def test_the_key_of_a_placing_is_written_out_by_hand() -> None:
    places = (Place("a", "a"), Place("b", "b", in_order=True), Place("c", "c"))
    placing = {"a": ["y", "x"], "b": ["y", "x"]}
    assert key_of(places, placing) == "x,y|y,x|"
    assert key_of(places, placing, empty_matters=False) == "x,y|y,x"


def test_no_two_cards_go_by_one_name() -> None:
    words = ("B", "b", "3 < 5", "3 > 5", "12.30", "12:30", "−", "2212", "=", "card", "10", "-10")
    assert len({card_id(one) for one in words}) == len(words)
