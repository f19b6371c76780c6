"""A route followed on a grid: where it ends, and the way back."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from ...model.activity import Answer, LikelyError, Solution
from ..kind import Unsolvable
from ..saying import capital
from .grid_journey import Journey
from .grid_moves import Go, Move, Stand, Turn, read_move, said, walk, way_back
from .grid_squares import name_of


def follow(journey: Journey, route: Sequence[str], back: bool) -> Solution:
    """Where a route ends, and the way back where that is asked for."""
    moves = [read_move(text, ("route", index)) for index, text in enumerate(route)]
    stands = list(walk(journey.start, moves, journey.grid))
    start, who = journey.start, journey.who
    answers = [_end(journey, moves, stands), *([_back(journey, moves)] if back else [])]
    ask = f"Start at {name_of(start.square)}, facing {start.facing}. Follow the steps. Where does {who} end, facing which way?"
    ask += " Write the way back." if back else ""
    path = [start.square, *(at.square for at, move in zip(stands, moves, strict=True) if isinstance(move, Go))]
    figures = ((journey.figure(),), (journey.figure(path=path, more=answers[0].says),))
    lines = [capital(said(move, journey.saying)) for move in moves]
    likely_error = _slip(journey, moves, stands[-1])
    return journey.solution(
        ask,
        lines,
        answers,
        figures,
        steps=len(moves),
        note="Each step leads to one place only.",
        likely_error=likely_error,
    )


def _end(journey: Journey, moves: Sequence[Move], stands: Sequence[Stand]) -> Answer:
    end, quarters = stands[-1], sum(move.quarters for move in moves if isinstance(move, Turn))
    told = [f"From {name_of(journey.start.square)}, facing {journey.start.facing}"]
    for move, at in zip(moves, stands, strict=True):
        told.append(
            f"{said(move, journey.saying)} to {name_of(at.square) if isinstance(move, Go) else f'face {at.facing}'}"
        )
    data = {"ends": name_of(end.square), "facing": end.facing, "degrees": 90 * quarters}
    answer = Answer(
        f"{capital(journey.who)} ends at {name_of(end.square)}, facing {end.facing}.", ", ".join(told) + ".", data
    )
    if journey.saying == "degrees" and quarters:
        in_all = f"Turned in all, in degrees: {quarters} × 90 = {90 * quarters}."
        answer = replace(answer, worked=f"{answer.worked} {in_all}")
    return answer


def _back(journey: Journey, moves: Sequence[Move]) -> Answer:
    steps = [said(move, journey.saying) for move in way_back(moves)]
    why = "Turn round, take the steps from last to first with each turn the other way, and turn round again."
    return Answer(
        f"The way back: {', '.join(steps) or 'stay there'}.",
        f"{why} It ends at {name_of(journey.start.square)}.",
        {"back": steps},
    )


def _slip(journey: Journey, moves: Sequence[Move], right: Stand) -> LikelyError | None:
    """Left and right muddled; where nothing comes of that, the start counted as the first square."""
    muddled = [Turn(move.quarters, not move.clockwise) if isinstance(move, Turn) else move for move in moves]
    try:
        wrong = list(walk(journey.start, muddled, journey.grid))[-1]
    except Unsolvable as off:
        return LikelyError("Mixes up left and right.", off.message)
    if wrong != right:
        gives = f"{capital(journey.who)} ends at {name_of(wrong.square)}, facing {wrong.facing}."
        return LikelyError("Mixes up left and right.", gives)
    first = next((abs(move.squares) for move in moves if isinstance(move, Go)), 0)
    return (
        LikelyError("Counts the square it stands on as 1.", f"Only {first - 1} where it says {first}.")
        if first
        else None
    )
