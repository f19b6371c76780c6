"""Follows a route over a grid, or finds every shortest one, and what that demands."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from ...model.activity import Answer, Context, LikelyError, Line, Solution, Task
from ...model.demands import Demands, Operation, amounts, operation
from ..kind import Unsolvable
from ..saying import capital
from .grid_moves import Move, Slide, Stand, Turn, is_slide, read_move, say_move, walk, way_back
from .grid_squares import AHEAD, Facing, Square, grid_of, name_of, square_of
from .say import Speaker
from .shortest_routes import distances, every_route, moves_of, runs_of, ways_to
from .tasks import Ending, FindRoutes, FollowRoute, GridAnswer, GridTask, Route, WayBack

_MOST_DRAWN = 6
_TURN_NAMES = {1: "quarter turn", 2: "half turn", 3: "three-quarter turn", 4: "whole turn"}


def solve(task: GridTask, context: Context) -> Solution[GridAnswer]:
    """Where the route ends, then the way back if asked for; or every shortest route, up before right first."""
    grid = grid_of(task.grid, task.blocked, context.caps.cells)
    start = Stand(square_of(task.start, grid, ("start",)), task.facing)
    slides = not isinstance(task, FindRoutes) and all(map(is_slide, task.route))
    say = Speaker(context, grid, start, task.turns or context.year.practice.position.turns, not slides)
    return _find(task, say) if isinstance(task, FindRoutes) else _follow(task, say)


def _follow(task: FollowRoute, say: Speaker) -> Solution[GridAnswer]:
    if not task.route:
        raise Unsolvable(("route",), "Either a route to follow or a goal to find is needed.", "give one of the two.")
    moves = [read_move(text, ("route", index)) for index, text in enumerate(task.route)]
    stands = list(walk(say.start, moves, say.grid))
    end, quarters = stands[-1], sum(move.quarters for move in moves if isinstance(move, Turn))
    returning = way_back(moves) if task.back else []
    answers: list[Answer[GridAnswer]] = [
        Answer(
            say.name_end(end),
            say.explain_end(moves, stands, quarters),
            Ending(name_of(end.square), end.facing, 90 * quarters),
        )
    ]
    if task.back:
        steps = tuple(say_move(move, say.turns) for move in returning)
        answers.append(Answer(say.name_way_back(returning), say.explain_way_back(), WayBack(steps)))
    path = [
        say.start.square,
        *(at.square for at, move in zip(stands, moves, strict=True) if not isinstance(move, Turn)),
    ]
    sums = [operation("×", quarters, 90, 90 * quarters)] if say.turns == "degrees" and quarters else []
    return Solution(
        task=Task(
            say.ask_where(task.back),
            say.context.characters[:1],
            lines=tuple(Line((capital(say_move(move, say.turns)),)) for move in moves),
            figures=(say.draw(),),
        ),
        answers=tuple(answers),
        demands=_demands([*moves, *returning], sums, say),
        steps=len(moves),
        note="Each step leads to one place only.",
        likely_error=_err(moves, end, say),
        answer_figures=(say.draw(path=path, more=answers[0].says),),
    )


def _err(moves: Sequence[Move], right: Stand, say: Speaker) -> LikelyError | None:
    """Left and right muddled; where nothing comes of that, the start counted as the first square."""
    muddled = [_muddle(move) for move in moves]
    try:
        wrong = list(walk(say.start, muddled, say.grid))[-1]
    except Unsolvable as off:
        return LikelyError("Mixes up left and right.", off.message)
    if wrong != right:
        return LikelyError("Mixes up left and right.", say.name_end(wrong))
    first = next((abs(move.squares) for move in moves if not isinstance(move, Turn)), 0)
    gives = f"Only {first - 1} where it says {first}."
    return LikelyError("Counts the square it stands on as 1.", gives) if first else None


def _muddle(move: Move) -> Move:
    """The move with left and right taken for each other."""
    match move:
        case Turn():
            return Turn(move.quarters, not move.clockwise)
        case Slide(way="left" | "right"):
            return move.opposite
        case _:
            return move


def _find(task: FindRoutes, say: Speaker) -> Solution[GridAnswer]:
    start, caps, grid = say.start, say.context.caps, say.grid
    goal = square_of(task.goal, grid, ("goal",))
    if goal == start.square:
        raise Unsolvable(("goal",), "The goal is the start.", "choose another square.")
    away = distances(grid, start.square)
    count = ways_to(away).get(goal, 0)
    if count > caps.answers:
        message = f"There are {count:,} shortest routes, more than anybody could list."
        raise Unsolvable(("goal",), message, "use a smaller grid, or block more squares.", "activity-too-many-answers")
    routes = every_route(grid, start.square, goal) if count else []
    moves = [moves_of(route, start.facing) for route in routes]
    paths = [_squares_over(start.square, route) for route in routes]
    sums = [
        operation("+", *(squares for _, squares in runs), len(route))
        for route in routes
        if len(runs := runs_of(route)) > 1 and say.context.year.knows("+")
    ]
    return Solution(
        task=Task(say.ask_for_routes(goal), say.context.characters[:1], figures=(say.draw(goal),)),
        answers=tuple(_answer(*found, say) for found in zip(routes, moves, paths, strict=True)),
        demands=_demands([move for each in moves for move in each], sums, say, _stretches(routes)),
        steps=max((len(each) for each in moves), default=1),
        note=say.explain_all(goal, away, count),
        likely_error=say.err_in_counting(away[goal]) if routes else None,
        answer_figures=tuple(
            say.draw(goal, path, f"Route {index}.") for index, path in enumerate(paths[:_MOST_DRAWN], 1)
        ),
    )


def _answer(route: Sequence[Facing], moves: Sequence[Move], path: Sequence[Square], say: Speaker) -> Answer[GridAnswer]:
    steps = tuple(say_move(move, say.turns) for move in moves)
    value = Route(steps, tuple(map(name_of, path)))
    return Answer(f"{capital(', '.join(steps))}.", say.explain_route(runs_of(route), len(route)), value)


def _squares_over(start: Square, route: Sequence[Facing]) -> list[Square]:
    squares = [start]
    for way in route:
        squares.append((squares[-1][0] + AHEAD[way][0], squares[-1][1] + AHEAD[way][1]))
    return squares


def _stretches(routes: Sequence[Sequence[Facing]]) -> set[int]:
    """The squares of each stretch one way."""
    return {squares for route in routes for _, squares in runs_of(route)}


def _demands(moves: Sequence[Move], sums: Sequence[Operation], say: Speaker, counted: Iterable[int] = ()) -> Demands:
    """What is read and written: squares counted, turns named as the year names them, sums."""
    goes = {abs(move.squares) for move in moves if not isinstance(move, Turn)}
    turns = [move for move in moves if isinstance(move, Turn)]
    degrees = say.turns == "degrees"
    names = [] if degrees else [_TURN_NAMES[turn.quarters] for turn in turns]
    ways = [("clockwise" if turn.clockwise else "anti-clockwise") for turn in turns if turn.quarters not in (2, 4)]
    words = [*names, *(ways if say.turns != "left and right" else []), *(["turn"] if turns else [])]
    return Demands(
        amounts=amounts(
            goes
            | set(counted)
            | ({90 * turn.quarters for turn in turns} if degrees else set())
            | {int(number) for one in sums for number in one.numbers}
        ),
        operations=tuple(dict.fromkeys(sums)),
        signs=frozenset({one.sign for one in sums} | ({"="} if sums else set()) | ({"°"} if degrees else set())),
        words=tuple(dict.fromkeys([*words, *(["degree"] if degrees else [])])),
    )
