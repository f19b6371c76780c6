"""Fractions as numbers, in words."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from fractions import Fraction

from ...expression.number import WrittenNumber
from ...model.activity import LikelyError
from ..saying import listed, part_name, plain
from .answers import Rewritten
from .number import WrittenAs, as_amount
from .tasks import EqualTask, OrderTask

ERROR_IN_EQUAL = LikelyError("Thinks that more parts make a larger fraction.", "that they are not equal")
NOTE_ON_WRITING = "A number can be written in many ways, all worth the same; these are the usual ones."


_FORMS: Mapping[WrittenAs, str] = {
    "fraction": "a fraction",
    "improper": "a fraction, without wholes",
    "mixed": "a mixed number",
    "decimal": "a decimal",
    "percent": "a percentage",
}


def has_percent(numbers: Sequence[WrittenNumber]) -> bool:
    """Whether any of them is written as a percentage, which no number sentence is made of here."""
    return any(number.text.endswith("%") for number in numbers)


def ask_for_equal(task: EqualTask) -> str:
    """Which are worth the same as each other, or as one."""
    if task.fraction is None:
        return "Which of these are worth the same?"
    which = "of these" if task.numbers else "fractions"
    return f"Which {which} are worth the same as {task.fraction.text}?"


def note_on_equal(task: EqualTask) -> str:
    """What was compared with what."""
    if task.fraction is None:
        return f"Each of the {len(task.numbers)} was compared with every other."
    if task.numbers:
        return f"Each of the {len(task.numbers)} was compared with {task.fraction.text}."
    under = task.fraction.value.denominator
    return f"Every number of parts up to {task.up_to} was tried: {under} must go into it."


def say_equal(pair: tuple[WrittenNumber, WrittenNumber]) -> str:
    """``2/4 is worth the same as 1/2``."""
    return f"{pair[0].text} is worth the same as {pair[1].text}"


def explain_equal(pair: tuple[WrittenNumber, WrittenNumber], over: Fraction, under: int) -> str:
    """That they are equal, and of which equal parts both are so many."""
    one, other = pair
    same = f"{one.text} = {other.text}."
    if has_percent(pair):
        same = f"{one.text} is {plain(one.value)}, and so is {other.text}."
    return same + (f" Both are {over} of {under} equal parts of one whole." if under > 1 else "")


def ask_for_order(task: OrderTask) -> str:
    """From which end."""
    return f"Put these in order, the {'greatest' if task.greatest_first else 'least'} first."


def say_order(places: Sequence[Sequence[WrittenNumber]]) -> str:
    """``1/2 and 2/4 together, then 3/4``."""
    return ", then ".join(
        listed([number.text for number in place]) + (" together" if len(place) > 1 else "") for place in places
    )


def explain_order(places: Sequence[Sequence[WrittenNumber]], sign: str, under: int, greatest_first: bool) -> str:
    """The order in signs, where ``sign`` is known, and each in parts of which ``under`` make one whole, if any do."""
    numbers = [number for place in places for number in place]
    told = []
    if sign and not has_percent(numbers):
        told.append(f" {sign} ".join(" = ".join(number.text for number in place) for place in places) + ".")
    if under:
        parts = [f"{number.text} is {number.value * under}" for number in numbers]
        told.append(f"In parts of which {under:,} make one whole, {listed(parts)}.")
    return " ".join(told) or f"Each is {'less' if greatest_first else 'more'} than the one before."


def expect_order_by_denominators(wrong: Sequence[WrittenNumber]) -> LikelyError:
    """Looking under the line only."""
    order = listed([number.text for number in wrong])
    return LikelyError("Looks at the numbers under the line only.", f"{order} as the order, least first")


def ask_to_write(form: WrittenAs) -> str:
    """In which form."""
    return f"Write each as {_FORMS[form]}."


def say_rewritten(one: Rewritten) -> str:
    """``0.71 is 71/100``."""
    return f"{one.number.text} is {one.written.text}"


def explain_by_parts(number: WrittenNumber, asked: WrittenNumber) -> str:
    """How many parts there are, of which so many make one whole."""
    under, parts = number.under, number.value * number.under
    return f"{under} {part_name(under)} make 1 whole. {number.text} is {parts} {part_name(under, int(parts))}: {asked.text}."


def explain_rewritten(number: WrittenNumber, through: WrittenNumber, asked: WrittenNumber) -> str:
    """Through which fraction it is found."""
    if has_percent((number, asked)):
        return f"{number.text} is {through.text}, which is {asked.text}."
    simplest = as_amount(number.value).text
    then = "" if through.text in (simplest, number.text) else f" = {simplest}"
    return f"{number.text} = {through.text}{then}."


def note_on_order(some_equal: bool) -> str:
    """That there is one answer, and where equals go."""
    return f"Numbers have one order{'; equal ones share a place' if some_equal else ''}."
