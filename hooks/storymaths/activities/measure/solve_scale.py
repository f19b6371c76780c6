"""Reading a scale of any interval: first what each small part is worth, then where the arrow stands."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from ...model.activity import Answer, Context, Figure, LikelyError, Solution, Task
from ...model.demands import Demands, amounts
from ...model.figures.measures import MeasureScale, Numbered, Pointer
from ...model.year import YearLimits
from ..kind import Unsolvable
from ..saying import written
from . import say_scale as say
from .amount import Amount, bare
from .answers import AtMark, BetweenMarks, Reading
from .scale import Scale, Standing
from .sums import Sentence, demands_of_sentences, demands_of_told, demands_of_unit, join
from .tasks import ReadScale

_ADDED_UP_TO = 4
_ARROWS = "ABCDEF"
_PLACES_DRAWN = 3


def read_scale(task: ReadScale, context: Context) -> Solution[Reading]:
    """What each arrow shows, in order: the mark it stands at, or the two it stands between and the nearer."""
    scale, year = _scale_of(task), context.year
    arrows = _ARROWS[: len(task.pointers)]
    part = _divide(scale, year)
    answers, demands = [], demands_of_sentences([part] if part else [], year) | demands_of_unit(scale.unit)
    for arrow, value in zip(arrows, task.pointers, strict=True):
        standing = scale.stand(value)
        reading, counted_on = _read(arrow, value, scale, standing), _count_on(scale, standing)
        why = say.explain_reading(scale, standing, reading, part, counted_on, year)
        answers.append(Answer(say.say_reading(reading, year), why, reading))
        demands |= demands_of_sentences([counted_on] if counted_on else [], year)
        demands |= demands_of_told(_told(scale, standing, reading), year)
        if standing.past and not counted_on:
            demands |= Demands(amounts=amounts([standing.past]))
    if scale.numbered > 1:
        demands |= Demands(amounts=amounts([scale.numbered]))
    return Solution(
        Task(
            say.ask_for_readings(scale),
            lines=tuple(say.leave_gap(arrow, scale) for arrow in arrows),
            figures=(Figure(_draw(task, scale), say.describe_scale(task, scale, arrows, year)),),
        ),
        tuple(answers),
        demands,
        2 + any(isinstance(answer.value, BetweenMarks) for answer in answers),
        say.note_parts(scale, year),
        _expect_ones(task, scale, year),
    )


def _scale_of(task: ReadScale) -> Scale:
    start, end = task.ends
    numbered = task.numbered or 1
    if not start < end:
        raise Unsolvable(("ends",), "The scale does not go from a smaller number to a larger.", "write it as [0, 100].")
    if task.parts % numbered:
        message = f"A number at every {numbered} marks does not fit a scale in {task.parts} parts."
        raise Unsolvable(("numbered",), message, f"choose a number that goes into {task.parts}.")
    for index, value in enumerate(task.pointers):
        if not start <= value <= end:
            message = f"{written(value, 3)} is not on a scale from {written(start, 3)} to {written(end, 3)}."
            raise Unsolvable(("pointers", index), message, "choose a number on the scale.")
    return Scale(start, end, task.parts, numbered, task.unit or "")


def _read(arrow: str, value: Fraction, scale: Scale, standing: Standing) -> Reading:
    if not standing.beyond:
        return AtMark(arrow, value, scale.unit)
    marks = (standing.low, standing.low + scale.step)
    half = Fraction(1, 2)
    return BetweenMarks(
        arrow, marks, "halfway" if standing.beyond == half else marks[standing.beyond > half], scale.unit
    )


def _divide(scale: Scale, year: YearLimits) -> Sentence:
    """What a part is worth, as a division where the year writes them."""
    if scale.numbered == 1 or not year.knows("÷"):
        return ()
    return (bare(scale.between_numbers), "÷", bare(scale.numbered), "=", bare(scale.step))


def _count_on(scale: Scale, standing: Standing) -> Sentence:
    """A few parts added to the last number; empty for none and for many."""
    if not 0 < standing.past <= _ADDED_UP_TO:
        return ()
    parts = [bare(standing.number), *[bare(scale.step)] * standing.past]
    return (*join(parts, "+"), "=", bare(standing.low))


def _told(scale: Scale, standing: Standing, reading: Reading) -> Iterator[Amount]:
    yield from map(bare, (scale.step, scale.between_numbers, standing.number, standing.low))
    if isinstance(reading, BetweenMarks):
        yield Amount(reading.between[1], scale.unit)
    else:
        yield Amount(reading.reading, scale.unit)


def _expect_ones(task: ReadScale, scale: Scale, year: YearLimits) -> LikelyError | None:
    """Taking every small mark for one more."""
    for value in task.pointers:
        standing = scale.stand(value)
        if standing.past and scale.step != 1 and not standing.beyond:
            return say.expect_ones(bare(standing.number + standing.past), bare(value), year)
    return None


def _draw(task: ReadScale, scale: Scale) -> MeasureScale:
    marks = range(0, scale.parts + 1, scale.numbered)
    labels = tuple(Numbered(mark, written(scale.start + mark * scale.step, _PLACES_DRAWN)) for mark in marks)
    pointers = _point(task.pointers, scale)
    return MeasureScale(task.form, scale.parts, labels, pointers, scale.unit)


def _point(values: Sequence[Fraction], scale: Scale) -> tuple[Pointer, ...]:
    along = ((value - scale.start) / (scale.end - scale.start) for value in values)
    return tuple(Pointer(arrow, at) for arrow, at in zip(_ARROWS, along, strict=False))
