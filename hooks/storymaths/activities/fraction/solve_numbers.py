"""Fractions as numbers: which are equal, in what order they come, and how else they are written."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from itertools import combinations, groupby
from math import lcm

from ...expression.number import WrittenNumber
from ...model.activity import Answer, Context, LikelyError, Line, Solution, Task
from ...model.demands import Demands
from ..given import need_some
from ..kind import Unsolvable
from ..sentences import as_line
from . import say_numbers as say
from .answers import EqualPair, NumbersInOrder, Rewritten
from .demands import EQUAL_PARTS, demands_of_numbers, demands_of_words, demands_of_written
from .drawing import cards_for_written, draw_bars
from .number import WrittenAs, as_amount, rewrite
from .tasks import EqualTask, OrderTask, WriteTask

_FINEST_PARTS = 10_000
Pair = tuple[WrittenNumber, WrittenNumber]


def find_equal(task: EqualTask, context: Context) -> Solution[EqualPair]:
    """Which are worth the same: the pairs of a list, those of a list equal to one, or all up to a number of parts."""
    need_some(task, numbers=task.numbers, fraction=task.fraction)
    fraction, numbers = task.fraction, task.numbers
    pairs = _find_pairs(task)
    if len(pairs) > context.caps.answers:
        message = f"There are {len(pairs)} equal pairs."
        raise Unsolvable(("numbers",), message, "give fewer numbers.", "activity-too-many-answers")
    through = [_common_parts(pair) for pair in pairs]
    read = [*([fraction] if fraction else []), *numbers]
    listed_ = tuple(Line((number.text,)) for number in numbers)
    return Solution(
        task=Task(
            say.ask_for_equal(task),
            lines=listed_ or tuple(as_line((one.text, "=", None)) for one in read),
            figures=draw_bars(read),
        ),
        answers=tuple(
            Answer(say.say_equal(pair), say.explain_equal(pair, over, under), EqualPair(pair))
            for pair, (over, under) in zip(pairs, through, strict=True)
        ),
        demands=demands_of_written([*read, *(other for _, other in pairs)])
        | demands_of_numbers(n for over, under in through if under > 1 for n in (over, under))
        | demands_of_numbers(one.value for one, other in pairs if say.has_percent((one, other)))
        | demands_of_words([], *((*EQUAL_PARTS, "whole") if any(under > 1 for _, under in through) else ()))
        | Demands(signs=frozenset("" if numbers and all(map(say.has_percent, pairs)) else "=")),
        steps=2,
        note=say.note_on_equal(task),
        likely_error=say.ERROR_IN_EQUAL if pairs else None,
        answer_figures=draw_bars(other for _, other in pairs),
        cards=cards_for_written(
            [*(numbers or read), *(n for pair in pairs for n in pair)], {} if numbers else {"=": 1}
        ),
    )


def _find_pairs(task: EqualTask) -> list[Pair]:
    fraction, numbers = task.fraction, task.numbers
    if numbers and task.up_to:
        message = '"up_to" says nothing where "numbers" lists what to look through.'
        raise Unsolvable(("up_to",), message, "keep one of them.", "activity-broken")
    if fraction is None:
        return [(a, b) for a, b in combinations(numbers, 2) if a.value == b.value]
    if numbers:
        return [(fraction, other) for other in numbers if other.value == fraction.value]
    if task.up_to is None or not 0 < fraction.value <= 1:
        message = "To find every equal fraction, a fraction of one whole and the most parts are needed."
        raise Unsolvable(("fraction",), message, 'write a fraction up to 1, and "up_to", such as 12.')
    over, under = fraction.value.as_integer_ratio()
    others = (WrittenNumber.over(over * times, under * times) for times in range(1, task.up_to // under + 1))
    return [(fraction, other) for other in others if other.text != fraction.text]


def _common_parts(pair: Pair) -> tuple[Fraction, int]:
    """So many of so many equal parts, which both are."""
    one, other = pair
    under = lcm(one.value.denominator, other.under, one.under)
    return one.value * under, under


def find_order(task: OrderTask, context: Context) -> Solution[NumbersInOrder]:
    """The list from the least, or from the greatest; equals share a place. Steps: one for each comparison."""
    numbers = sorted(task.numbers, key=lambda number: number.value, reverse=task.greatest_first)
    if len(numbers) < 2:
        raise Unsolvable(("numbers",), "There is nothing to put in order.", "give two numbers or more.")
    places = tuple(tuple(group) for _, group in groupby(numbers, key=lambda number: number.value))
    found = NumbersInOrder(tuple(numbers), tuple(place for place in places if len(place) > 1))
    sign = ">" if task.greatest_first else "<"
    signs_known = context.year.knows(sign)
    under = lcm(*(number.value.denominator for number in numbers))
    in_parts = 1 < under <= _FINEST_PARTS
    filled = as_line((None, *((sign, None) * (len(numbers) - 1))))
    worked = say.explain_order(places, sign if signs_known else "", under if in_parts else 0, task.greatest_first)
    written_in_signs = signs_known and not say.has_percent(numbers)
    return Solution(
        task=Task(
            say.ask_for_order(task),
            lines=(Line((", ".join(number.text for number in task.numbers),)), *([filled] if signs_known else [])),
        ),
        answers=(Answer(say.say_order(places), worked, found),),
        demands=demands_of_written(numbers)
        | demands_of_numbers([under, *(number.value * under for number in numbers)] if in_parts else [])
        | demands_of_words([], *(("parts", "whole") if in_parts else ()))
        | Demands(signs=frozenset((sign if signs_known else "") + ("=" if written_in_signs and found.equal else ""))),
        steps=len(numbers) - 1,
        note=say.note_on_order(bool(found.equal)),
        likely_error=_order_by_denominators(numbers),
        answer_figures=draw_bars(numbers),
        cards=cards_for_written(numbers, {sign: len(numbers) - 1} if signs_known else {}),
    )


def _order_by_denominators(numbers: Sequence[WrittenNumber]) -> LikelyError | None:
    """Ordering by the number under the line alone, where that gives another order."""
    if any("/" not in number.text for number in numbers):
        return None
    rising = list(numbers if numbers[0].value < numbers[-1].value else numbers[::-1])
    wrong = sorted(rising, key=lambda number: number.under)
    return None if wrong == rising else say.expect_order_by_denominators(wrong)


def rewrite_numbers(task: WriteTask) -> Solution[Rewritten]:
    """Each number written in another form, in the order given; a decimal through tenths, hundredths or thousandths."""
    form = task.written_as or "fraction"
    answers, read = [], list(task.numbers)
    for index, number in enumerate(task.numbers):
        asked, simplest = rewrite(number, form, ("numbers", index)), as_amount(number.value)
        through = simplest if _is_simplified(number, form) else _over_power_of_ten(number.value) or simplest
        told = through if form == "fraction" and "/" not in number.text else asked
        one = Rewritten(number, told, simplest if form == "fraction" else None)
        why = (
            say.explain_by_parts(number, asked) if form in _IN_PARTS else say.explain_rewritten(number, through, asked)
        )
        answers.append(Answer(say.say_rewritten(one), why, one))
        read += [asked] if form in _IN_PARTS else [through, simplest, asked]
    return Solution(
        task=Task(say.ask_to_write(form), lines=tuple(as_line((n.text, "=", None)) for n in task.numbers)),
        answers=tuple(answers),
        demands=demands_of_written(read) | demands_of_words([], form) | Demands(signs=frozenset("=")),
        steps=1 + (form == "percent"),
        note=say.NOTE_ON_WRITING,
        cards=cards_for_written([*task.numbers, *(answer.value.written for answer in answers)], {"=": 1}),
    )


_IN_PARTS = ("improper", "mixed")


def _is_simplified(number: WrittenNumber, form: WrittenAs) -> bool:
    """Whether a fraction only becomes a simpler one, which takes no tenths."""
    return form == "fraction" and "/" in number.text


def _over_power_of_ten(number: Fraction) -> WrittenNumber | None:
    under = next((n for n in (10, 100, 1000, 10_000) if (number * n).denominator == 1), None)
    return WrittenNumber.over(int(number * under), under) if under else None
