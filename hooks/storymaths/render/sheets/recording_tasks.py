"""A task as a recording sheet shows it: what is given, what there is to fill in, and room for the answers."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Any

from ...activities.ordinals import ordinal
from ...model.activity import GAP, Figure, Line, Solution, Task
from ...model.figures.amounts import PartWhole, Track, TwoBars
from ...model.figures.measures import ClockFace
from ...model.figures.shapes import LaidPieces, MirrorSquares
from ...model.figures.sorting import Places, SortCarroll, SortHoop, SortThreeRings, SortVenn
from ...model.quantity import UNITS
from .sheet_context import SheetPictures
from .words import runs

_MOST_LINES = 14
_SPARE_LINES = 2
"""More lines than answers, so that the sheet does not say when all are found."""
_LINES_BELOW_CHOICES = 3
_NUMBER = re.compile(r"\d+")
_ONLY_NUMBERS = re.compile(r"[-−]?\d[\d,]*(?:[./]\d+)?%?(?: \d+/\d+)?")
_JUDGED = re.compile(r"[=≠<>]")
_MAKES_A_TOTAL = re.compile(rf"{re.escape(GAP)} = [^+−×÷]*")
_LETTER_MM, _GAP_MM, _COLUMN_MM = 2.5, 25, 80
"""How wide a letter and a short gap are about, and how wide half a sheet is."""


def shown_task(title: str, solution: Solution, pictures: SheetPictures) -> dict[str, Any]:
    """The task without its answers."""
    task = solution.task
    figures = [
        figure for figure in task.figures if not isinstance(figure.data, TwoBars)
    ]  # bars to scale tell who has more
    given, lines = _given_and_lines(task, len(solution.answers))
    choices = _choices(given)
    if choices:
        given, lines = [], lines[:_LINES_BELOW_CHOICES]
    tabled = task.table if task.table and len(task.table.columns) > 1 else None
    return {
        "title": runs(title),
        "ask": runs(task.ask),
        "players": pictures.characters(task.characters, task.shows) if task.shows else [],
        "figures": [
            shown
            | {
                "written-in": _is_written_in(figure) or (not lines and _has_empty_box(figure)),
                "laid": isinstance(figure.data, LaidPieces),
            }
            for figure, shown in zip(figures, pictures.figures(tuple(figures)), strict=True)
        ],
        "choices": [runs(one) for one in choices],
        "given": [runs(one) for one in given],
        "table": _table(task) if tabled else None,
        "lines": [runs(one) for one in lines],
        "across": 2 if len(lines) > 2 and all(map(_is_short, lines)) else 1,
    }


def _is_written_in(figure: Figure) -> bool:
    """Whether the answer goes into the drawing itself."""
    match figure.data:
        case MirrorSquares():
            return True
        case Places(places=places):
            return not any(places)
        case SortThreeRings(places=places):
            return not any(places)
        case SortHoop(inside=inside, outside=outside):
            return not inside and not outside
        case (
            SortVenn(both=both, first=first, second=second, neither=neither)
            | SortCarroll(both=both, first=first, second=second, neither=neither)
        ):
            return not (both or first or second or neither)
        case Track(cells=cells):
            return "" in cells
        case ClockFace(hands=hands):
            return hands is None
        case _:
            return False


def _has_empty_box(figure: Figure) -> bool:
    """Whether a part–whole model has a box for the one number that is missing."""
    return isinstance(figure.data, PartWhole) and "?" in (figure.data.whole, *figure.data.parts)


def _given_and_lines(task: Task, answers: int) -> tuple[Sequence[str], Sequence[str]]:
    """What is only to be read, and the lines to write on; an empty line is all for writing.

    Whatever a drawing shows is not said again, and what is written into a drawing needs no line.
    """
    lines = [str(line) for line in task.lines]
    if task.table and len(task.table.columns) == 1:
        lines.append(", ".join(row[0] for row in task.table.rows))
    if answers == 1 and not lines and any(_has_empty_box(figure) for figure in task.figures):
        return (), ()
    if any(isinstance(figure.data, LaidPieces) for figure in task.figures):
        return lines, [""]  # it is laid, and drawn round: what there is to write is a name
    rowed = any(isinstance(figure.data, Track) for figure in task.figures)
    if task.asks_after:
        return [] if rowed else lines, [f"{one}: {GAP}" for one in task.asks_after]
    if any(map(_is_written_in, task.figures)):
        return [one for one in lines if GAP not in one], []
    if rowed:
        return [], [""] * max(1, min(answers, 3))
    if task.in_order:
        return lines, [f"{ordinal(place)}: {GAP}" for place in range(1, len(lines) + 1)]
    return _written(task, answers)


def _choices(given: Sequence[str]) -> list[str]:
    """Numbers to choose among, where nothing else is given: they stand in a row, with room for a ring round each."""
    numbers = [number for one in given for number in one.split(", ")]
    return numbers if len(numbers) > 1 and all(map(_ONLY_NUMBERS.fullmatch, numbers)) else []


def _is_filled_in(task: Task) -> bool:
    """Whether the answers go into the table of the task: one with every cell full is only to be read."""
    return task.table is not None and any(not cell.strip() or GAP in cell for row in task.table.rows for cell in row)


def _written(task: Task, answers: int) -> tuple[Sequence[str], Sequence[str]]:
    """A lone frame comes as often as there are answers to find and some to spare, and so does each of several that
    have more answers than one. A question has room for its answer beside it, and so has each of several lines that
    have an answer apiece or are to be judged."""
    lines, spare = task.lines, min(_MOST_LINES, answers + _SPARE_LINES)
    texts = [str(line) for line in lines]
    if any(line.gaps for line in lines):
        if len(lines) == 1:
            once = task.filled_once or (answers == 1 and _has_one_answer(lines[0]))
            return (), texts * (1 if once else spare)
        twice = answers > len(lines) and all(line.gaps > 1 for line in lines)
        return (), [text for text in texts for _ in range(2 if twice else 1)]
    judged = len(lines) > 1 and all(map(_JUDGED.search, texts))
    if lines and (len(lines) == answers or judged or all(line.asks for line in lines)):
        return (), [f"{text} {GAP}" for text in texts]
    return texts, [""] * (0 if _is_filled_in(task) and not lines else max(3, spare) if not lines else min(spare, 6))


def _has_one_answer(line: Line) -> bool:
    """Whether all but one number stands there, or a unit alone, so that nothing is to be searched for."""
    before, unit = line.parts[0], line.parts[-1].strip()
    is_amount = not before and (unit in UNITS or unit.endswith("³"))
    return line.gaps == 1 and (is_amount or len(_NUMBER.findall(str(line))) > 1)


def _is_short(text: str) -> bool:
    """Whether two such lines go side by side: with a number in it, and gaps for numbers."""
    gaps = text.count(GAP)
    letters = len(text) - gaps * len(GAP)
    numbers = len(_NUMBER.findall(text))
    several_in_one = bool(_MAKES_A_TOTAL.fullmatch(text))  # coins, things or friends
    return bool(gaps and numbers) and not several_in_one and letters * _LETTER_MM + gaps * _GAP_MM <= _COLUMN_MM


def _table(task: Task) -> dict[str, Any] | None:
    if task.table is None:
        return None
    rows = [[runs(cell) for cell in row] for row in task.table.rows]
    return {"caption": task.table.caption, "head": [runs(column) for column in task.table.columns], "rows": rows}
