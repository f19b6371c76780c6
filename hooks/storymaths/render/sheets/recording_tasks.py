"""A task as a recording sheet shows it: what is given, what there is to fill in, and room for the answers."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from ...model.activity import Solution, Task
from .sheet_context import SheetPictures
from .words import Runs, runs

_MOST_LINES = 14
_SPARE_LINES = 2
"""More lines than answers, so that the sheet does not say when all are found."""
_GAP = "___"


def shown_task(title: str, solution: Solution, pictures: SheetPictures) -> dict[str, Any]:
    """The task without its answers."""
    task = solution.task
    given, lines = _given_and_lines(task.lines, len(solution.answers), task.table is not None)
    return {
        "title": runs(title),
        "ask": runs(task.ask),
        "players": pictures.characters(task.characters, task.shows) if task.shows else [],
        "figures": list(pictures.figures(task.figures)),
        "given": [runs(line) for line in given],
        "table": _table(task),
        "lines": lines,
    }


def _given_and_lines(lines: tuple[str, ...], answers: int, tabled: bool) -> tuple[Sequence[str], list[Runs]]:
    """What is only to be read, and the lines to write on; an empty line is all for writing.

    A lone frame comes as often as there are answers to find and some to spare. A question has room for its answer
    beside it, and so has each of several lines that have an answer apiece.
    """
    spare = min(_MOST_LINES, answers + _SPARE_LINES)
    if any(_GAP in line for line in lines):
        return (), [runs(line) for line in (lines * spare if len(lines) == 1 and answers != 1 else lines)]
    if lines and (len(lines) == answers or all(line.rstrip().endswith("?") for line in lines)):
        return (), [runs(f"{line} {_GAP}") for line in lines]
    return lines, [[]] * (0 if tabled and not lines else max(3, spare) if not lines else min(spare, 6))


def _table(task: Task) -> dict[str, Any] | None:
    if task.table is None:
        return None
    rows = [[runs(cell) for cell in row] for row in task.table.rows]
    return {"caption": task.table.caption, "head": [runs(column) for column in task.table.columns], "rows": rows}
