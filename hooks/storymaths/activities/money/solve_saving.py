"""Money shared, and money saved week by week."""

from __future__ import annotations

from fractions import Fraction

from ...model.activity import Answer, Context, Solution, Task
from ...model.demands import Demands, amounts, operation
from ..given import need_one, need_some
from ..kind import Unsolvable
from . import say_saving as say
from .amount import demands_of_told
from .bill import add_up, demands_of_bill
from .sums import Sum, demands_of_sums, divide, multiply, take
from .tasks import SaveUp, Share, ShareMoney, Weeks


def share_money(task: ShareMoney, context: Context) -> Solution[Share]:
    """What each gets, or what a part comes to, when some is taken off first and some from the share."""
    need_some(task, items=task.items, start=task.start)
    need_one(task, among=task.among, fraction=task.fraction)
    part = Fraction(1, task.among) if task.among else task.fraction or Fraction(0)
    sums = add_up(task.bill, context)
    left, got = _left_and_got(task, part, context)
    if task.less:
        sums.append(take(task.bill.total, task.less))
    sums += _sums_to_part(left, part, context)
    if task.each_less:
        sums.append(take(got, task.each_less))
    final = got - sum(task.each_less)
    unshared = task.bill.total * part
    return Solution(
        Task(say.ask_for_share(task, part, context)),
        (Answer(say.say_share(final, task, context), say.explain_share(sums, context), Share(final)),),
        demands_of_bill(task.bill, context)
        | demands_of_told([final], context, (*task.less, *task.each_less))
        | demands_of_sums(sums, context)
        | Demands(amounts=amounts(say.numbers_of_part(task, part))),
        len(sums),
        "Equal shares are all the same.",
        say.expect_sharing_all(int(unshared), context) if task.less and unshared.denominator == 1 else None,
    )


def _left_and_got(task: ShareMoney, part: Fraction, context: Context) -> tuple[int, int]:
    """What is shared, and what each or the part gets of it. Raises ``Unsolvable``."""
    loc = ("among",) if task.among else ("fraction",)
    left = task.bill.total - sum(task.less)
    got = left * part
    if not 0 < part <= 1:
        raise Unsolvable(loc, "More than all of it cannot be given.", "write a fraction no more than 1.")
    if left <= 0 or got < sum(task.each_less):
        raise Unsolvable(loc, "More would be taken off than there is.", "take off less.")
    if got.denominator > 1:
        raise Unsolvable(loc, *say.refuse_share(left, context))
    return left, int(got)


def _sums_to_part(left: int, part: Fraction, context: Context) -> list[Sum]:
    one = left // part.denominator
    sums = [divide(left, part.denominator)] if part.denominator > 1 else []
    return sums + ([multiply(part.numerator, one, context)] if part.numerator > 1 else [])


def save_up(task: SaveUp, context: Context) -> Solution[Weeks]:
    """How many weeks until an amount is saved: the first weeks as told, then as many as it takes."""
    bill = task.bill
    sums = add_up(bill, context)
    first = sum(count for count, _ in task.items)
    left = task.amount - bill.total
    if left < 0:
        raise Unsolvable(("amount",), *say.refuse_saving(bill.total, task.amount, context))
    if bill.total:
        sums.append(take(task.amount, [bill.total]))
    more = -(-left // task.each)
    if more:
        sums.append(multiply(more, task.each, context))
    short = multiply(more - 1, task.each, context) if more * task.each > left and more > 1 else None
    weeks = (first, more, first + more) if first and more else None
    counts = [count for count, _ in task.items] + [first + more]
    told = [task.amount, task.each, *([bill.start] if bill.start else []), *(each for _, each in task.items)]
    return Solution(
        Task(say.ask_for_weeks(task, context)),
        (Answer(say.say_weeks(first + more), say.explain_weeks(sums, short, weeks, context), Weeks(first + more)),),
        demands_of_told(told, context)
        | demands_of_sums([*sums, *([short] if short else [])], context)
        | Demands(amounts=amounts(counts))
        | _demands_of_weeks(weeks),
        len(sums) + (short is not None) + (weeks is not None),
        "A week fewer would not be enough.",
        say.expect_weeks(more) if weeks else None,
    )


def _demands_of_weeks(weeks: tuple[int, int, int] | None) -> Demands:
    if weeks is None:
        return Demands()
    return Demands(amounts=amounts(weeks), operations=(operation("+", *weeks),), signs=frozenset("+="))
