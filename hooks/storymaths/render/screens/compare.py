"""Statements to complete with a sign or a number, one board a statement; statements to judge, all on one board."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from ...activities.compare.tasks import CompareTask, Comparison
from ...activities.worked import Worked
from ...model.activity import Line
from .board import Board, Piece, Place, keyed
from .pieces import card, card_id, sort_in_two, with_nearby

_GAP = Place("gap", "what is missing", 1)


def boards(worked: Worked[CompareTask, Comparison]) -> Iterable[Board]:
    """In the order of the lines; those to judge come first."""
    found: dict[int, list[Comparison]] = {}
    for answer in worked.solution.answers:
        found.setdefault(answer.value.line, []).append(answer.value)
    lines = list(enumerate(worked.solution.task.lines, 1))
    judged = {number: line for number, line in lines if not line.gaps}
    if judged:
        yield judge([str(line) for line in judged.values()], [number in found for number in judged])
    for number, line in lines:
        if line.gaps and number in found:
            yield _complete(worked.fields, line, found[number])


def judge(lines: Sequence[str], truths: Sequence[bool]) -> Board:
    """A card for each line, to be laid under true or not true."""
    pieces = tuple(Piece(f"line-{n}", line) for n, line in enumerate(lines, 1))
    true = [piece.id for piece, so in zip(pieces, truths, strict=True) if so]
    return sort_in_two("", pieces, true, "true", "not true")


def _complete(task: CompareTask, line: Line, found: Sequence[Comparison]) -> Board:
    fills = [one.fill if isinstance(one.fill, str) else one.fill.as_plain() for one in found]
    if all(isinstance(one.fill, str) for one in found):
        pieces = tuple(map(card, task.signs))
    elif all(fill.isdigit() for fill in fills):
        pieces = with_nearby([int(fill) for fill in fills])
    else:
        pieces = tuple(map(card, dict.fromkeys(fills)))
    ways = [[{_GAP.id: [card_id(fill)]}] for fill in fills]
    return Board("sentence", "", pieces, (_GAP,), keyed((_GAP,), ways), between=line.parts)
