"""Every shortest route to a goal on a grid."""

from __future__ import annotations

from collections.abc import Sequence

from ...model.activity import Answer, LikelyError, Solution
from ..kind import Unsolvable
from ..saying import capital, counted
from .grid_journey import Journey
from .grid_moves import said
from .grid_squares import AHEAD, Facing, Square, name_of, square_of
from .shortest_routes import distances, every_route, moves_of, runs_of, ways_to

_MOST_DRAWN = 6


def find(journey: Journey, goal_name: str) -> Solution:
    """Every shortest route. Raises ``Unsolvable`` where there are more than can be listed."""
    start, caps = journey.start, journey.context.caps
    goal = square_of(goal_name, journey.grid, ("goal",))
    if goal == start.square:
        raise Unsolvable(("goal",), "The goal is the start.", "choose another square.")
    away = distances(journey.grid, start.square)
    count = ways_to(away).get(goal, 0)
    if count > caps.answers:
        message = f"There are {count:,} shortest routes, more than anybody could list."
        raise Unsolvable(("goal",), message, "use a smaller grid, or block more squares.", "activity-too-many-answers")
    routes = every_route(journey.grid, start.square, goal) if count else []
    figures = tuple(
        journey.figure(goal, _walked(start.square, route), f"Route {index}.")
        for index, route in enumerate(routes[:_MOST_DRAWN], 1)
    )
    return journey.solution(
        _ask(journey, goal),
        (),
        [_answer(journey, route) for route in routes],
        ((journey.figure(goal),), figures),
        steps=max((len(moves_of(route, start.facing)) for route in routes), default=1),
        note=_note(goal, away, count),
        likely_error=LikelyError(
            "Counts the square it starts on.", f"{away[goal] + 1} squares in place of {away[goal]}."
        )
        if routes
        else None,
    )


def _ask(journey: Journey, goal: Square) -> str:
    past = " past the blocked squares" if journey.grid.blocked else ""
    return (
        f"{capital(journey.who)} stands at {name_of(journey.start.square)}, facing {journey.start.facing}, and goes to "
        f"{name_of(goal)}. Find every shortest route{past}. Write the steps and the turns."
    )


def _answer(journey: Journey, route: Sequence[Facing]) -> Answer:
    steps = [said(move, journey.saying) for move in moves_of(route, journey.start.facing)]
    squares = [name_of(square) for square in _walked(journey.start.square, route)]
    runs = runs_of(route)
    worked = ", ".join(f"{count} {way}" for way, count in runs)
    if len(runs) > 1 and journey.context.year.year:
        worked += f": {' + '.join(str(count) for _, count in runs)} = {len(route)}"
    return Answer(f"{capital(', '.join(steps))}.", f"{worked}.", {"route": steps, "squares": squares})


def _walked(start: Square, route: Sequence[Facing]) -> list[Square]:
    squares = [start]
    for way in route:
        squares.append((squares[-1][0] + AHEAD[way][0], squares[-1][1] + AHEAD[way][1]))
    return squares


def _note(goal: Square, away: dict[Square, int], count: int) -> str:
    """How one knows that these are all, or that there is none."""
    if not count:
        reached = counted(len(away) - 1, "other squares")
        return f"Every way to {name_of(goal)} is blocked: {reached} can be reached, and it is not one of them."
    return (
        f"No route is shorter than {counted(away[goal], 'squares')}. As many lead to a square as to those one square "
        f"nearer the start, put together; counting on like that, {count} lead to {name_of(goal)}."
    )
