"""What stands where on a board of the class screen, without a browser: moves, keys, and what is kept."""

from __future__ import annotations

import json
from typing import Any

import pytest
from py_mini_racer import MiniRacer
from storymaths.render.screens.board import Board, Piece, Place, key_of
from storymaths.scripts.join import joined
from storymaths.scripts.run import run

BOARD = Board(
    "rows",
    "",
    (Piece("a", "A", copies=2), Piece("b", "B", sort="card"), Piece("c", "C", copies=None)),
    (Place("one", "One", 1), Place("two", "Two", in_order=True), Place("cards", "Cards", takes="card")),
    {},
)
PLAY = """(data, kept, moves) => {
  const state = openState(data, kept, () => {});
  const done = moves.map(([act, ...given]) => state[act](...given));
  return { done, key: state.key(), left: data.pieces.map(({ id }) => state.left(id)), found: state.found() };
}"""


def play(board: Board, moves: list[list[Any]], kept: object = None) -> dict[str, Any]:
    given = ", ".join(json.dumps(value) for value in (board.as_data(), kept, moves))
    source = f"const {{ openState }} = {joined('board/state.js')}; JSON.stringify(({PLAY})({given}))"
    with MiniRacer() as engine:
        told: dict[str, Any] = json.loads(str(engine.eval(source)))
    return told


def test_pieces_run_out_unless_they_are_endless() -> None:
    told = play(BOARD, [["move", "a", None, "two"]] * 3 + [["move", "c", None, "two"]] * 3)
    assert told["done"] == [True, True, False, True, True, True]
    assert told["left"] == [0, 1, None]  # JSON has no word for endless


def test_a_full_place_hands_over_what_it_holds_and_takes_only_its_sort() -> None:
    told = play(BOARD, [["move", "a", None, "one"], ["move", "b", None, "one"], ["move", "a", None, "cards"]])
    assert told["done"] == [True, True, False]
    assert (told["key"], told["left"][:2]) == ("b||", [2, 0])


def test_the_only_one_of_its_kind_leaves_where_it_is() -> None:
    told = play(BOARD, [["move", "b", None, "one"], ["move", "b", None, "two"]])
    assert told["key"] == "|b|"


def test_taking_back_and_starting_again() -> None:
    told = play(BOARD, [["move", "a", None, "one"], ["startAgain"], ["takeBack"], ["takeBack"], ["takeBack"]])
    assert told["key"] == "||"
    assert play(BOARD, [["move", "a", None, "one"], ["startAgain"], ["takeBack"]])["key"] == "a||"


def test_keys_are_those_the_build_makes() -> None:
    standing = {"one": ["c"], "two": ["b", "a"], "cards": ["b"]}
    kept = {"now": standing, "before": [], "tries": []}
    assert play(BOARD, [], kept)["key"] == key_of(BOARD.places, standing) == "c|b,a|b"


@pytest.mark.parametrize("kept", [[], 7, {"now": {"one": ["gone"], "two": [], "cards": []}}, {"now": {"one": []}}])
def test_what_was_kept_of_another_board_is_forgotten(kept: object) -> None:
    assert play(BOARD, [], kept)["key"] == "||"


def test_tries_count_each_answer_once() -> None:
    told = play(BOARD, [["record", "x", 0], ["record", "y", 0], ["record", "z", None], ["record", "w", 1]])
    assert told["found"] == 2


@pytest.mark.parametrize(
    ("left", "right", "tilt"), [(0, 0, 0), (5, 5, 0), (0, 4, 9), (4, 0, -9), (10, 9, -3), (6, 9, 3)]
)
def test_a_beam_leans_by_what_is_on_it_and_never_too_little_to_see(left: int, right: int, tilt: int) -> None:
    assert json.loads(run("board/beam.js", "tiltOf", left, right)) == tilt
