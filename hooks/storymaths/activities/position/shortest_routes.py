"""Every shortest route over a grid past blocked squares."""

from __future__ import annotations

from collections import deque
from collections.abc import Sequence

from .grid_moves import Go, Move, Turn, tidied
from .grid_squares import AHEAD, FACINGS, Facing, Grid, Square


def distances(grid: Grid, start: Square) -> dict[Square, int]:
    """How many squares away each square is that can be reached at all."""
    found, waiting = {start: 0}, deque([start])
    while waiting:
        square = waiting.popleft()
        for across, up in AHEAD.values():
            beside = (square[0] + across, square[1] + up)
            if grid.free(beside) and beside not in found:
                found[beside] = found[square] + 1
                waiting.append(beside)
    return found


def ways_to(away: dict[Square, int]) -> dict[Square, int]:
    """How many shortest routes lead to each square that can be reached: the sum of those one square nearer."""
    ways: dict[Square, int] = {}
    for square, squares in away.items():  # nearest first, as they were found
        nearer = [(square[0] - across, square[1] - up) for across, up in AHEAD.values()]
        ways[square] = sum(ways[n] for n in nearer if away.get(n) == squares - 1) or 1
    return ways


def every_route(grid: Grid, start: Square, goal: Square) -> list[tuple[Facing, ...]]:
    """Every shortest route as ways to go, square by square; up before right before down before left."""
    to_goal = distances(grid, goal)
    routes: list[tuple[tuple[Facing, ...], Square]] = [((), start)]
    for left in range(to_goal.get(start, 0), 0, -1):
        routes = [
            ((*route, way), beside)
            for route, (across, up) in routes
            for way in FACINGS
            if to_goal.get(beside := (across + AHEAD[way][0], up + AHEAD[way][1])) == left - 1
        ]
    return [route for route, _ in routes]


def moves_of(route: Sequence[Facing], facing: Facing) -> list[Move]:
    """The moves that follow a route, from the way one faces at first."""
    moves: list[Move] = []
    for way in route:
        net = (FACINGS.index(way) - FACINGS.index(facing)) % 4
        if net:
            moves.append(Turn(1, False) if net == 3 else Turn(net, True))
        moves.append(Go(1))
        facing = way
    return tidied(moves)


def runs_of(route: Sequence[Facing]) -> list[tuple[Facing, int]]:
    """A route as stretches one way: ``[("up", 2), ("right", 3)]``."""
    runs: list[tuple[Facing, int]] = []
    for way in route:
        if runs and runs[-1][0] == way:
            runs[-1] = (way, runs[-1][1] + 1)
        else:
            runs.append((way, 1))
    return runs
