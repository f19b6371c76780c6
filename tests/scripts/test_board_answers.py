"""Every answer of every board of a class screen, placed by the site's own script: each is accepted, another is not."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from typing import Any

from project import activities_on, collection, reference
from py_mini_racer import MiniRacer
from storymaths.activities.table import KINDS
from storymaths.model.session import Session
from storymaths.publish.gallery import examples_of
from storymaths.render.screens.activity_slides import parts_of
from storymaths.render.screens.board import Board, key_of, placings
from storymaths.render.screens.table import PLAYED
from storymaths.scripts.join import joined

PLAY = """([data, placing]) => {
  const state = openState(data, undefined, () => {});
  const moved = Object.entries(placing).flatMap(([place, pieces]) => pieces.map((piece) => state.move(piece, null, place)));
  return { moved: moved.every(Boolean), answer: data.answers[state.key()] ?? null };
}"""


def boards() -> list[Board]:
    """Those of every session's screen, with the versions for other years, and of the screen with every kind's examples."""
    on_pages = (found.worked.done for page in collection().of_kind(Session) for found in activities_on(page))
    examples = (worked.done for name in PLAYED for _, worked in examples_of(KINDS[name], reference()))
    return [
        part.board
        for done in (*on_pages, *examples)
        if done is not None
        for part in parts_of(done)
        if part.board is not None
    ]


def moves(board: Board, placing: Mapping[str, Sequence[str]]) -> dict[str, list[str]]:
    """A placing without the pieces that stand in their places from the start."""
    stays = {piece.id for piece in board.pieces if piece.stays}
    return {place: [piece for piece in pieces if piece not in stays] for place, pieces in placing.items()}


def wrong(board: Board) -> dict[str, list[str]]:
    """One piece more than stands there from the start, where that is no answer."""
    return next(
        {place.id: [piece.id]}
        for piece in board.pieces
        if not piece.stays
        for place in board.places
        if place.takes in ("", piece.sort)
        and key_of(
            board.places,
            {**board.start, place.id: [*board.start.get(place.id, ()), piece.id]},
            board.empty_matters,
        )
        not in board.answers
    )


def played(asked: list[tuple[dict[str, Any], dict[str, list[str]]]]) -> list[dict[str, Any]]:
    """What comes of each placing, made move by move."""
    source = f"const {{ openState }} = {joined('board/state.js')}; JSON.stringify({json.dumps(asked)}.map({PLAY}))"
    with MiniRacer() as engine:
        told: list[dict[str, Any]] = json.loads(str(engine.eval(source)))
    return told


def test_every_answer_is_accepted_by_its_number_and_another_placing_is_not() -> None:
    every = boards()
    asked, expected = [], []
    for board in every:
        for number, placing in placings(board):
            asked.append((board.as_data(), moves(board, placing)))
            expected.append({"moved": True, "answer": number})
        asked.append((board.as_data(), wrong(board)))
        expected.append({"moved": True, "answer": None})
    assert len(every) > 100
    assert played(asked) == expected
