"""A journey on a grid: who goes, from where, and how it is drawn and handed over."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from ...model.activity import Answer, Context, Figure, LikelyError, Solution, Task
from ..met import demands_met
from .grid_moves import Saying, Stand
from .grid_squares import Grid, Square, name_of

_VOCABULARY = (
    "whole turn", "half turn", "quarter turn", "three-quarter turn", "clockwise", "anti-clockwise", "turn",
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Journey:
    """What every task on a grid starts from."""

    context: Context
    grid: Grid
    start: Stand
    saying: Saying
    ask: str | None
    """The task in the author's own words."""

    @property
    def who(self) -> str:
        """Who goes: the first of the cast, or a counter."""
        return self.context.characters[0].name if self.context.characters else "the counter"

    def figure(self, goal: Square | None = None, path: Sequence[Square] = (), more: str = "") -> Figure:
        """The grid with what stands on it, and a way over it where there is one."""
        grid, start, blocked = self.grid, self.start, sorted(self.grid.blocked)
        last = name_of((grid.columns - 1, grid.rows - 1))
        alt = f"A grid of squares from A1, bottom left, to {last}. Start at {name_of(start.square)}, facing {start.facing}."
        alt += f" Goal at {name_of(goal)}." if goal else ""
        alt += f" Blocked: {', '.join(map(name_of, blocked))}." if blocked else ""
        alt += f" The way: {', '.join(map(name_of, path))}." if path else ""
        data = {
            "columns": grid.columns,
            "rows": grid.rows,
            "start": list(start.square),
            "facing": start.facing,
            "goal": list(goal) if goal else [],
            "blocked": [list(square) for square in blocked],
            "path": [list(square) for square in path],
        }
        return Figure("grid-route", data, f"{alt} {more}".strip())

    def solution(
        self,
        ask: str,
        lines: Sequence[str],
        answers: Sequence[Answer],
        figures: tuple[tuple[Figure, ...], tuple[Figure, ...]],
        *,
        steps: int,
        note: str,
        likely_error: LikelyError | None,
    ) -> Solution:
        """The whole solution; ``figures`` are the pupil's, then the answers'."""
        task = Task(self.ask or ask, self.context.characters[:1], lines=tuple(lines), figures=figures[0])
        demands = demands_met(task, answers, _VOCABULARY)
        if self.saying == "degrees":
            demands = replace(demands, symbols=demands.symbols | {"°"}, words=(*demands.words, "degree"))
        return Solution(task, tuple(answers), demands, steps, note, likely_error, figures[1])
