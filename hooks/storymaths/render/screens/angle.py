"""Angles to name, turns to measure, the angle that is missing: a card for each answer."""

from __future__ import annotations

from collections.abc import Iterable

from ...activities.angle import say
from ...activities.angle.tasks import RIGHT, WHOLE_TURN, AngleAnswer, AngleName, AngleTask, Missing, Named, Turned
from ...activities.saying import counted, written
from ...activities.worked import Worked
from ...model.year import YearLimits
from .board import Board
from .pieces import card, one_card

_NAMES: tuple[AngleName, ...] = ("acute", "right", "obtuse", "straight", "reflex")
_NEARBY = (-10, -5, 5, 10, 90)
_MOST_PLACES = 3


def boards(worked: Worked[AngleTask, AngleAnswer]) -> Iterable[Board]:
    """A board for each angle."""
    year, lines = worked.context.year, worked.solution.task.lines
    for number, answer in enumerate(worked.solution.answers):
        yield _ask(answer.value, str(lines[number].parts[0]).rstrip(": ,"), year)


def _ask(one: AngleAnswer, says: str, year: YearLimits) -> Board:
    match one:
        case Named():
            # The first three are always to choose from: those that occur would tell.
            names = [name for name in _NAMES if name in (*_NAMES[:3], *year.practice.angle.names, one.name)]
            return one_card(
                says, say.sort_in_words(one.name, year), [card(say.sort_in_words(name, year)) for name in names]
            )
        case Turned(degrees=degrees):
            quarters = range(RIGHT, WHOLE_TURN + 1, RIGHT)
            sizes = sorted({degrees, *quarters, *(degrees + step for step in (-30, 30) if year.knows("°"))})
            right = _size(degrees, year)
            return one_card(says, right, [card(_size(size, year)) for size in sizes if 0 < size <= WHOLE_TURN])
        case Missing(degrees=degrees):
            near = sorted({degrees, *(degrees + step for step in _NEARBY if degrees + step > 0)})
            return one_card(
                says,
                _degrees(written(degrees, _MOST_PLACES)),
                [card(_degrees(written(one, _MOST_PLACES))) for one in near],
            )


def _size(degrees: int, year: YearLimits) -> str:
    return _degrees(str(degrees)) if year.knows("°") else counted(degrees // RIGHT, "right angles")


def _degrees(number: str) -> str:
    return f"{number}°"
