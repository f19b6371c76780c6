"""A journey on a grid in words and drawings: the task, each answer, how one knows these are all."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from ...model.activity import Context, Figure, LikelyError
from ...model.figures.shapes import GridRoute
from ...model.practice.position import Saying
from ..saying import capital, counted
from .grid_moves import Move, Stand, Turn, say_move
from .grid_squares import Facing, Grid, Square, name_of


@dataclass(frozen=True, slots=True)
class Speaker:
    """Says what happens on a grid."""

    context: Context
    grid: Grid
    start: Stand
    turns: Saying
    faces: bool = True
    """Whether it matters which way one faces."""

    @property
    def who(self) -> str:
        """Who goes: the first of the cast, or a counter."""
        return self.context.characters[0].name if self.context.characters else "the counter"

    @property
    def _standing(self) -> str:
        return self._place(self.start)

    def _place(self, at: Stand) -> str:
        return f"{name_of(at.square)}, facing {at.facing}" if self.faces else name_of(at.square)

    # A route to follow.

    def ask_where(self, back: bool) -> str:
        """The task."""
        facing = ", facing which way" if self.faces else ""
        ask = f"Start at {self._standing}. Follow the steps. Where does {self.who} end{facing}?"
        return f"{ask} Write the way back." if back else ask

    def name_end(self, end: Stand) -> str:
        """Where it ends."""
        return f"{capital(self.who)} ends at {self._place(end)}."

    def explain_end(self, moves: Sequence[Move], stands: Sequence[Stand], quarters: int) -> str:
        """Step by step."""
        walked = (
            f"{say_move(move, self.turns)} to {f'face {at.facing}' if isinstance(move, Turn) else name_of(at.square)}"
            for move, at in zip(moves, stands, strict=True)
        )
        told = f"{', '.join((f'From {self._standing}', *walked))}."
        if self.turns == "degrees" and quarters:
            told += f" Turned in all, in degrees: {quarters} × 90 = {90 * quarters}."
        return told

    def name_way_back(self, moves: Sequence[Move]) -> str:
        """The steps that lead back."""
        return f"The way back: {', '.join(say_move(move, self.turns) for move in moves) or 'stay there'}."

    def explain_way_back(self) -> str:
        """Why they do."""
        if not self.faces:
            return f"Each step the other way, from last to first. It ends at {name_of(self.start.square)}."
        why = "Turn round, take the steps from last to first with each turn the other way, and turn round again."
        return f"{why} It ends at {name_of(self.start.square)}."

    # Routes to find.

    def ask_for_routes(self, goal: Square) -> str:
        """The task."""
        past = " past the blocked squares" if self.grid.blocked else ""
        return (
            f"{capital(self.who)} stands at {self._standing}, and goes to "
            f"{name_of(goal)}. Find every shortest route{past}. Write the steps and the turns."
        )

    def explain_route(self, runs: Sequence[tuple[Facing, int]], squares: int) -> str:
        """A route as stretches one way."""
        told = ", ".join(f"{count} {way}" for way, count in runs)
        if len(runs) > 1 and self.context.year.knows("+"):
            told += f": {' + '.join(str(count) for _, count in runs)} = {squares}"
        return f"{told}."

    def explain_all(self, goal: Square, away: Mapping[Square, int], count: int) -> str:
        """How one knows that these are all, or that there is none."""
        if not count:
            reached = counted(len(away) - 1, "other squares")
            return f"Every way to {name_of(goal)} is blocked: {reached} can be reached, and it is not one of them."
        return (
            f"No route is shorter than {counted(away[goal], 'squares')}. Write on each square how many routes lead to it: "
            f"add up those of its neighbours one step nearer the start. {name_of(goal)} gets {count}."
        )

    def err_in_counting(self, squares: int) -> LikelyError:
        """The start counted as well."""
        return LikelyError("Counts the square it starts on.", f"{squares + 1} squares instead of {squares}.")

    # Drawings.

    def draw(self, goal: Square | None = None, path: Sequence[Square] = (), more: str = "") -> Figure:
        """The grid with what stands on it, and a way over it where there is one."""
        grid, start, blocked = self.grid, self.start, sorted(self.grid.blocked)
        last = name_of((grid.columns - 1, grid.rows - 1))
        alt = f"A grid of squares from A1, bottom left, to {last}. Start at {self._standing}."
        alt += f" Goal at {name_of(goal)}." if goal else ""
        alt += f" Blocked: {', '.join(map(name_of, blocked))}." if blocked else ""
        alt += f" The way: {', '.join(map(name_of, path))}." if path else ""
        route = GridRoute(grid.columns, grid.rows, start.square, start.facing, goal, tuple(blocked), tuple(path))
        return Figure(route, f"{alt} {more}".strip())
