"""Which of two amounts is more and by how much; amounts in order; amounts told in another unit."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from itertools import groupby, pairwise

from ...model.activity import Answer, Context, LikelyError, Solution, Task
from ...model.demands import Demands, amounts
from ...model.year import YearLimits
from ..kind import Unsolvable
from ..saying import ending_places, listed, there_are
from . import say_comparing as say
from .amount import CALENDAR, SIZES, Amount, bare, days_in, tell
from .answers import Compared, Converted, Ordered
from .measured import Measured, find_common_unit, list_things, measured_of, show, turn_into
from .sums import Sentence, demands_of_sentences, demands_of_told, demands_of_unit, join, make_all_like, make_like
from .tasks import CompareAmounts, ConvertAmounts, OrderAmounts, WithMeasured


def compare(task: CompareAmounts, context: Context) -> Solution[Compared]:
    """Which of two is more, and by how much: into one unit, then the difference."""
    things, year = measured_of(task, context), context.year
    if len(things) != 2:
        message = f"{there_are(len(things), 'amounts')} to compare."
        raise Unsolvable(("find",), message, "give two amounts.")
    unit = find_common_unit([one.amount for one in things], ("amounts",))
    size = {thing.id or place: thing.amount.into(unit) for place, thing in zip(_PLACES, things, strict=True)}
    (first, one), (second, other) = size.items()
    gap = Amount(abs(one.number - other.number), unit)
    ahead, behind = things if one.number > other.number else reversed(things)
    made_like = make_all_like([thing.amount for thing in things], unit, year)
    if gap.number:
        more = first if one.number > other.number else second
        start, last = _find_gap(max(one, other, key=_number), min(one, other, key=_number), gap)
        says = say.say_difference(ahead, behind, gap, year)
    else:
        more, start, last = "same", "", (one, "=", other)
        says = say.say_same(things[0], things[1], year)
    misled = (things[0].amount.number - things[1].amount.number) * (one.number - other.number) < 0
    word = say.word_for_more(one)
    told = bare(gap.number) if one.kind == "temperature" else gap
    return Solution(
        _set(task, say.ask_which(one), things, context),
        (Answer(says, say.explain_difference(made_like, last, start, year), Compared(more, gap.number, unit)),),
        demands_of_told([*(thing.amount for thing in things), *([told] if gap.number else [])], year)
        | Demands(words=(word,) if one.kind != "temperature" else (), amounts=amounts([0]) if start else ())
        | demands_of_sentences([*made_like, last], year),
        2 + len(made_like),
        "Put both in one unit, and compare the numbers." if made_like else "Compare the numbers.",
        say.expect_numbers_alone(behind.tell(year)) if misled else None,
    )


_PLACES = ("first", "second")


def _number(amount: Amount) -> Fraction:
    return amount.number


def _find_gap(more: Amount, less: Amount, gap: Amount) -> tuple[str, Sentence]:
    """Taking the less from the more, with how it begins in words; by way of nought when it lies between."""
    if less.number < 0 < more.number:
        return say.UP_TO_NOUGHT, (bare(-less.number), "+", bare(more.number), "=", bare(gap.number))
    if less.number < 0:
        return say.BELOW_NOUGHT, (bare(-less.number), "−", bare(-more.number), "=", bare(gap.number))
    return "", (more, "−", less, "=", gap)


def _set(task: WithMeasured, ask: str, things: Sequence[Measured], context: Context, in_order: bool = False) -> Task:
    """The task with what is measured on the cast's cards, or in lines, which may be to put in order."""
    if task.fact:
        return Task(ask, context.characters, tuple(show(one.amount, context.year) for one in things))
    return Task(ask, lines=list_things(things, context.year), in_order=in_order)


def order(task: OrderAmounts, context: Context) -> Solution[Ordered]:
    """The amounts from the least, or from the greatest; equals share a place. A step for each comparison."""
    things, year = measured_of(task, context), context.year
    if len(things) < 2:
        raise Unsolvable(("find",), "There is nothing to put in order.", "give two amounts or more.")
    given = [one.amount for one in things]
    if {amount.kind for amount in given} == {"time", CALENDAR}:
        return _order_by_calendar(task, things, context)
    unit = find_common_unit(given, ("amounts",))
    ordered = sorted(things, key=_size, reverse=task.greatest_first)
    places = [list(group) for _, group in groupby(ordered, key=_size)]
    unlike = len({amount.unit for amount in given}) > 1
    sentences = make_all_like(given, unit, year)
    sign = ">" if task.greatest_first else "<"
    if year.knows(sign):
        chain = (part for place in places for part in (sign, *join((one.amount.into(unit) for one in place), "=")))
        sentences.append(tuple(chain)[1:])
    says = say.say_order(places, year)
    words = () if task.greatest_first else ("least",)
    return Solution(
        _set(task, say.ask_for_order(task), things, context, in_order=True),
        (Answer(says, say.explain_order(places, sentences, year), _in_order(places, year)),),
        demands_of_told(given, year, (*words, "order")) | demands_of_sentences(sentences, year),
        len(things) - 1,
        " ".join(say.note_on_order(unlike, any(len(place) > 1 for place in places))),
        _expect_order_by_number(task, things, ordered, year),
    )


def _order_by_calendar(task: OrderAmounts, things: Sequence[Measured], context: Context) -> Solution[Ordered]:
    """Weeks beside months and years, which have no fixed number of days. Raises ``Unsolvable`` for two too near."""
    year = context.year
    ordered = sorted(things, key=lambda thing: days_in(thing.amount))
    for one, other in pairwise(ordered):
        if days_in(one.amount)[1] >= days_in(other.amount)[0]:
            message = (
                f"{tell(one.amount, year)} and {tell(other.amount, year)} are too near: a month has 28 to 31 days."
            )
            raise Unsolvable(("amounts",), message, "choose lengths of time further apart.")
    ordered = ordered[::-1] if task.greatest_first else ordered
    places = [[one] for one in ordered]
    says = say.say_order(places, year)
    return Solution(
        _set(task, say.ask_for_order(task), things, context, in_order=True),
        (Answer(says, say.explain_order(places, (), year), _in_order(places, year)),),
        demands_of_told([one.amount for one in things], year, ("more", "order")),
        len(things) - 1,
        "A year has 12 months, and a month a little more than 4 weeks.",
        _expect_order_by_number(task, things, ordered, year),
    )


def _size(thing: Measured) -> Fraction:
    return thing.amount.size


def _in_order(places: Sequence[Sequence[Measured]], year: YearLimits) -> Ordered:
    keys = [tuple(one.key(year) for one in place) for place in places]
    return Ordered(tuple(key for place in keys for key in place), tuple(place for place in keys if len(place) > 1))


def _expect_order_by_number(
    task: OrderAmounts, things: Sequence[Measured], ordered: Sequence[Measured], year: YearLimits
) -> LikelyError | None:
    by_number = sorted(things, key=lambda thing: thing.amount.number, reverse=task.greatest_first)
    alike = len({thing.amount.number for thing in things}) == 1
    if alike or by_number == list(ordered) or list(map(_size, by_number)) == list(map(_size, ordered)):
        return None
    return say.expect_numbers_alone(listed([one.tell(year) for one in by_number]))


def convert(task: ConvertAmounts, context: Context) -> Solution[Converted]:
    """Each amount told in another unit, in order."""
    things, to, year = measured_of(task, context), task.to, context.year
    answers, sentences = [], list[list[Sentence]]()
    for one in things:
        if one.amount.kind not in {kind for kind, _ in SIZES.values()}:
            message = f"An amount of {one.amount.unit or 'no unit'} is in no standard unit."
            raise Unsolvable(("amounts",), message, "use units such as cm, kg, ml, minutes or weeks.")
        other = turn_into(one.amount, to, ("to",))
        sentences.append(make_like(one.amount, to, year) or [(one.amount.as_one, "=", other)])
        value = Converted(tell(one.amount, year), other.number, to, one.id or None)
        answers.append(say.answer_conversion(one, other, value, sentences[-1], year))
    found = [Amount(answer.value.number, to) for answer in answers]
    return Solution(
        Task(
            say.ask_in_unit(to),
            context.characters if task.fact else (),
            lines=tuple(say.leave_gap(one.amount, to, year) for one in things),
        ),
        tuple(answers),
        demands_of_told([*(one.amount for one in things), *found], year)
        | demands_of_unit(to)
        | demands_of_sentences([one for some in sentences for one in some], year),
        1 + any(len(some) > 1 for some in sentences),
        "The same amount has one number in each unit.",
        _expect_other_way(things, to, year),
    )


def _expect_other_way(things: Sequence[Measured], to: str, year: YearLimits) -> LikelyError | None:
    """The first amount that comes out when it is turned the wrong way."""
    for amount in (thing.amount for thing in things):
        one = Amount(Fraction(1), amount.unit).into(to).number
        if one != 1 and ending_places(amount.number / one) is not None:
            return say.expect_other_way(one > 1, Amount(amount.number / one, to), amount, year)
    return None
