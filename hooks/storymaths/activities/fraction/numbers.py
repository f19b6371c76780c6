"""Fractions as numbers: which are equal, in what order they come, and how else they are written."""

from __future__ import annotations

from itertools import combinations, groupby
from math import lcm
from typing import TYPE_CHECKING

from ...model.activity import Answer, Context, LikelyError, Solution, Task
from ..kind import Unsolvable
from ..saying import listed, plain
from .number import WrittenNumber
from .words import bar, expressed, solution

if TYPE_CHECKING:
    from . import FractionFields


def equal(fields: FractionFields, context: Context) -> Solution:
    """Which are worth the same: the pairs of a list, those of a list equal to one, or all up to a number of parts."""
    fraction, numbers = fields.fraction, fields.numbers
    if numbers and fields.up_to:
        message = '"up_to" says nothing where "numbers" lists what to look through.'
        raise Unsolvable(("up_to",), message, "keep one of them.", "activity-broken")
    if fraction is None:
        pairs = [(a, b) for a, b in combinations(numbers, 2) if a.value == b.value]
        ask, lines = "Which of these are worth the same?", tuple(number.text for number in numbers)
        note = f"Each of the {len(numbers)} was compared with every other."
    elif numbers:
        pairs = [(fraction, other) for other in numbers if other.value == fraction.value]
        ask, lines = f"Which of these are worth the same as {fraction.text}?", tuple(number.text for number in numbers)
        note = f"Each of the {len(numbers)} was compared with {fraction.text}."
    else:
        if fields.up_to is None or not 0 < fraction.value <= 1:
            message = "To find every equal fraction, a fraction of one whole and the most parts are needed."
            raise Unsolvable(("fraction",), message, 'write a fraction up to 1, and "up_to", such as 12.')
        pairs = _every_equal(fraction, min(fields.up_to, 1000))
        ask, lines = f"Which fractions are worth the same as {fraction.text}?", (f"{fraction.text} = ___",)
        note = f"Every number of parts up to {fields.up_to} was tried: {fraction.value.denominator} must go into it."
    if len(pairs) > context.caps.answers:
        message = f"There are {len(pairs)} equal pairs."
        raise Unsolvable(("numbers",), message, "give fewer numbers.", "activity-too-many-answers")
    answers = [_same(one, other) for one, other in pairs]
    figures = tuple(figure for number in [n for n in (fraction, *numbers) if n][:6] for figure in bar(number, "1"))
    task = Task(ask, lines=lines, figures=figures)
    likely_error = (
        LikelyError("Thinks that more parts make a larger fraction.", "that they are not equal") if answers else None
    )
    return solution(
        task, answers, context, 2, note, likely_error, figures=tuple(f for _, b in pairs[:6] for f in bar(b, "1"))
    )


def _every_equal(fraction: WrittenNumber, most: int) -> list[tuple[WrittenNumber, WrittenNumber]]:
    over, under = fraction.value.numerator, fraction.value.denominator
    others = (WrittenNumber.over(over * times, under * times) for times in range(1, most // under + 1))
    return [(fraction, other) for other in others if other.text != fraction.text]


def _same(one: WrittenNumber, other: WrittenNumber) -> Answer:
    under = lcm(one.value.denominator, other.under, one.under)
    over = one.value * under
    through = f" Both are {over} of {under} equal parts of one whole." if under > 1 else ""
    if one.text.endswith("%") or other.text.endswith("%"):
        worked = f"{one.text} is {plain(one.value)}, and so is {other.text}.{through}"
    else:
        worked = f"{one.text} = {other.text}.{through}"
    return Answer(f"{one.text} is worth the same as {other.text}.", worked, {"equal": [one.text, other.text]})


def order(fields: FractionFields, context: Context) -> Solution:
    """The list from the least, or from the greatest; equals share a place. Steps: one for each comparison."""
    numbers = sorted(fields.numbers, key=lambda n: n.value, reverse=fields.greatest_first)
    if len(numbers) < 2:
        raise Unsolvable(("numbers",), "There is nothing to put in order.", "give two numbers or more.")
    sign = " > " if fields.greatest_first else " < "
    places = [list(group) for _, group in groupby(numbers, key=lambda n: n.value)]
    says = ", then ".join(listed([n.text for n in place]) + (" together" if len(place) > 1 else "") for place in places)
    worked = ""
    if context.year.year >= 2 and not any(n.text.endswith("%") for n in numbers):
        worked = sign.join(" = ".join(n.text for n in place) for place in places) + ". "
    under = lcm(*(n.value.denominator for n in numbers))
    if under > 1 and under <= 10_000:
        parts = [f"{n.text} is {n.value * under}" for n in numbers]
        worked += f"In parts of which {under:,} make one whole, {listed(parts)}."
    worked = worked.strip() or f"Each is {'less' if fields.greatest_first else 'more'} than the one before."
    data = {
        "order": [n.text for n in numbers],
        "equal": [[n.text for n in place] for place in places if len(place) > 1],
    }
    end = "greatest" if fields.greatest_first else "least"
    figures = tuple(figure for n in numbers[:6] for figure in bar(n, "1"))
    lines = (", ".join(n.text for n in fields.numbers), sign.join(["___"] * len(numbers)))
    task = Task(f"Put these in order, the {end} first.", lines=lines[: 1 + (context.year.year >= 2)])
    note = "Numbers have one order; two that are equal stand at one place."
    likely_error = _by_digits(numbers)
    answer = Answer(f"{says}.", worked, data)
    return solution(task, [answer], context, len(numbers) - 1, note, likely_error, figures=figures)


def _by_digits(numbers: list[WrittenNumber]) -> LikelyError | None:
    """Ordering by the number under the line alone, where that gives another order."""
    if any("/" not in n.text for n in numbers):
        return None
    rising = numbers if numbers[0].value < numbers[-1].value else numbers[::-1]
    wrong = sorted(rising, key=lambda n: n.under)
    if wrong == rising:
        return None
    return LikelyError(
        "Looks at the numbers under the line only.", f"{listed([n.text for n in wrong])} as the order, least first"
    )


def write(fields: FractionFields, context: Context) -> Solution:
    """Each number written in another form, in the order given: through tenths, hundredths or thousandths."""
    form = fields.written_as or "fraction"
    answers = []
    for index, number in enumerate(fields.numbers):
        text = expressed(number.value, form, ("numbers", index))
        simplest = expressed(number.value, "fraction", ("numbers", index))
        under = next((n for n in (10, 100, 1000, 10_000) if (number.value * n).denominator == 1), 0)
        through = f"{number.value * under}/{under}" if under else simplest
        told = through if form == "fraction" and "/" not in number.text else text
        worked = f"{number.text} = {through}" + ("" if through in (simplest, number.text) else f" = {simplest}") + "."
        if "%" in worked or form == "percent":
            worked = f"{number.text} is {through}, which is {text}."
        data = {"number": number.text, "written": told} | ({"simplest": simplest} if form == "fraction" else {})
        answers.append(Answer(f"{number.text} is {told}.", worked, data))
    article = "percentage" if form == "percent" else form
    task = Task(f"Write each as a {article}.", lines=tuple(f"{n.text} = ___" for n in fields.numbers))
    note = "A number can be written in many ways, all worth the same; these are the usual ones."
    return solution(task, answers, context, 1 + (form == "percent"), note)
