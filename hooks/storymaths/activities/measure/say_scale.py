"""A scale read, in words."""

from __future__ import annotations

from collections.abc import Sequence

from ...model.activity import LikelyError, Line
from ...model.year import YearLimits
from ..saying import counted, listed
from .amount import Amount, bare, tell
from .answers import BetweenMarks, Reading
from .scale import Scale, Standing
from .sums import Sentence, write_sentence
from .tasks import ReadScale


def ask_for_readings(scale: Scale) -> str:
    """What the arrows show."""
    return f"What does each arrow show{f', in {scale.unit}' if scale.unit else ''}?"


def leave_gap(arrow: str, scale: Scale) -> Line:
    """``A: ___ cm``."""
    return Line((f"{arrow}: ", f" {scale.unit}" if scale.unit else ""))


def say_reading(reading: Reading, year: YearLimits) -> str:
    """``Arrow A shows 35 cm``."""
    if not isinstance(reading, BetweenMarks):
        return f"Arrow {reading.arrow} shows {tell(Amount(reading.reading, reading.unit), year)}"
    low, high = reading.between
    nearer = reading.nearer
    where = nearer if isinstance(nearer, str) else f"nearer {tell(bare(nearer), year)}"
    return f"Arrow {reading.arrow} is between {tell(bare(low), year)} and {tell(Amount(high, reading.unit), year)}, {where}"


def explain_reading(
    scale: Scale, standing: Standing, reading: Reading, part: Sentence, counted_on: Sentence, year: YearLimits
) -> str:
    """What a part is worth, the way from the last number, and the marks beside the arrow."""
    low, past = tell(bare(standing.low), year), standing.past
    told = [_explain_part(scale, part, year)]
    if counted_on:
        told.append(f"{write_sentence(counted_on, year)}.")
    elif past:
        told.append(f"{counted(past, 'parts')} on from {tell(bare(standing.number), year)} is {low}.")
    if isinstance(reading, BetweenMarks):
        told.append(f"The next mark is {tell(bare(reading.between[1]), year)}.")
    else:
        told.append("The arrow is at that mark." if past else f"The arrow is at {low}.")
    return " ".join(told)


def _explain_part(scale: Scale, part: Sentence, year: YearLimits) -> str:
    each = tell(bare(scale.step), year)
    if scale.numbered == 1:
        return f"Each part is {each}."
    if part:
        return f"{write_sentence(part, year)}, so each part is {each}."
    return f"{scale.numbered} parts make {tell(bare(scale.between_numbers), year)}, so each part is {each}."


def note_parts(scale: Scale, year: YearLimits) -> str:
    """What a part is worth, for the adult."""
    between = tell(Amount(scale.between_numbers, scale.unit), year)
    part = tell(Amount(scale.step, scale.unit), year)
    if scale.numbered == 1:
        return f"From one number to the next is {between}, and there is a number at every mark."
    parts = counted(scale.numbered, "equal parts")
    return f"From one number to the next is {between}, in {parts}, so a part is worth {part}."


def expect_ones(wrong: Amount, right: Amount, year: YearLimits) -> LikelyError:
    """Taking every mark for one."""
    return LikelyError("Counts every small mark as one.", f"{tell(wrong, year)} instead of {tell(right, year)}")


def describe_scale(task: ReadScale, scale: Scale, arrows: Sequence[str], year: YearLimits) -> str:
    """The drawing in words, without giving its readings away."""
    ends = f"from {tell(bare(scale.start), year)} to {tell(Amount(scale.end, scale.unit), year)}"
    at = [scale.marks(value) for value in task.pointers]
    where = [
        f"{name} at mark {mark}" if mark.denominator == 1 else f"{name} between marks {int(mark)} and {int(mark) + 1}"
        for name, mark in zip(arrows, at, strict=True)
    ]
    every = "every mark" if scale.numbered == 1 else f"every {scale.numbered} marks"
    parts = f"in {scale.parts} equal parts, with a number at {every}"
    return f"A {task.form} {ends} {parts}. Arrows, marks counted from 0: {listed(where)}."
