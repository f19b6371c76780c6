"""The drawing of all cases of a statement, each marked."""

from __future__ import annotations

from ...model.activity import Figure
from ...model.figures.cases import CaseGrid, CaseStrip, Mark
from .cases_tried import Tried
from .say import describe_cases
from .statement import Statement

_ACROSS, _IN_STRIP, _ROW, _DIGITS = 12, 100, 10, 3
"""The most numbers across a grid, in a strip and in its rows, and the most digits that fit in a square."""


def draw_cases(statement: Statement, tried: Tried) -> tuple[Figure, ...]:
    """A grid of all cases, when there are one or two letters and it can be taken in at a glance."""
    letters = statement.letters
    if any(len(str(end)) > _DIGITS for numbers in letters.values() for end in (min(numbers), max(numbers))):
        return ()
    alt = describe_cases(len(letters), len(tried.true), len(tried.false))
    marks: dict[tuple[int, ...], Mark] = {tuple(case.values()): "yes" for case in tried.true}
    marks |= {tuple(case.values()): "no" for case in tried.false}
    if len(letters) == 2 and all(len(numbers) <= _ACROSS for numbers in letters.values()):
        down, across = letters.values()
        first, second = letters
        cells = tuple(tuple(marks.get((row, column), "") for column in across) for row in down)
        return (Figure(CaseGrid((first, second), tuple(across), tuple(down), cells), alt),)
    if len(letters) == 1 and len(numbers := next(iter(letters.values()))) <= _IN_STRIP:
        rows = tuple(tuple(numbers[at : at + _ROW]) for at in range(0, len(numbers), _ROW))
        cells = tuple(tuple(marks.get((number,), "") for number in row) for row in rows)
        return (Figure(CaseStrip(rows, cells), alt),)
    return ()
