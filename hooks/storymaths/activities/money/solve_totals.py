"""Money in all, and which of two purses holds more."""

from __future__ import annotations

from typing import Literal

from ...model.activity import Answer, Context, LikelyError, Solution, Task
from ...model.demands import Demands, amounts
from ..given import need_some
from ..kind import Unsolvable
from . import say_totals as say
from .amount import demands_of_told, tell
from .bill import Term, add_up, demands_of_bill, terms_of
from .coins import draw_coins
from .sums import Sum, add, demands_of_sums, take
from .tasks import AddUp, ComparePurses, PurseCompared, Total


def find_total(task: AddUp, context: Context) -> Solution[Total]:
    """What there is in all, less what goes."""
    need_some(task, items=task.items, prices=task.prices, purse=task.purse, start=task.start)
    bill = task.bill
    sums = add_up(bill, context)
    left = bill.total - sum(task.less)
    if not bill.amounts:
        raise Unsolvable(("start",), "There is no money to add up.", "have more to begin with.")
    if left < 0:
        raise Unsolvable(("less",), "More is taken away than there is.", "have more to begin with.")
    if task.less:
        sums.append(take(bill.total, task.less))
    terms = terms_of(bill, context)
    return Solution(
        Task(
            say.ask_for_total(task, context),
            lines=(say.leave_gap(terms, task.less, context),),
            figures=(draw_coins(task.purse, "Coins", context),) if task.purse else (),
        ),
        (Answer(f"There is {tell(left, context)}", say.explain_total(sums, left, context), Total(left)),),
        demands_of_bill(bill, context)
        | demands_of_told([left], context, task.less)
        | demands_of_sums(sums, context)
        | _demands_of_line(terms, task.less, context),
        max(1, len(bill.amounts) - 1 + len(task.less) + len(bill.counts)),
        "The order of adding makes no difference.",
        _expect_error(task, left, context),
    )


def _demands_of_line(terms: list[Term], less: tuple[int, ...], context: Context) -> Demands:
    notation = say.notation_of_line(terms, less, context)
    times = [count for count, _ in terms if count > 1]
    signs = {sign for sign, used in (("+", len(terms) > 1), ("−", less), ("×", times), ("=", True)) if used}
    read = amounts(notation.number(pence) for pence in (*(each for _, each in terms), *less))
    return Demands(amounts=read + amounts(times), signs=frozenset(signs) | notation.signs)


def _expect_error(task: AddUp, left: int, context: Context) -> LikelyError | None:
    if task.purse:
        return say.expect_counting(len(task.purse), left, context) if left != len(task.purse) else None
    once = left - sum((count - 1) * each for count, each in task.items)
    return say.expect_once(once, context) if task.bill.counts and once > 0 else None


def compare_purses(task: ComparePurses, context: Context) -> Solution[PurseCompared]:
    """Which of two purses holds more, and how much more."""
    one, other = sum(task.purse), sum(task.other)
    more, less = max(one, other), min(one, other)
    sums: list[Sum] = [add(purse) for purse in (task.purse, task.other) if len(purse) > 1]
    if more > less:
        sums.append(take(more, [less]))
    which: Literal["first", "second", "same"] = "same" if one == other else "first" if one > other else "second"
    answer = PurseCompared(which, more - less)
    purses = (("first", task.purse), ("second", task.other))
    coins = len(task.purse) - len(task.other)
    told = [more - less] if more > less else [] if sums else [one]
    return Solution(
        Task(
            "Which purse holds more money, and how much more?",
            lines=tuple(say.list_purse(name, purse, context) for name, purse in purses),
            figures=tuple(draw_coins(purse, f"The {name} purse", context) for name, purse in purses),
        ),
        (Answer(say.say_comparison(answer, context), say.explain_comparison(sums, one, context), answer),),
        demands_of_told(told, context, (*task.purse, *task.other), ("more",)) | demands_of_sums(sums, context),
        len(task.purse) + len(task.other) - 1,
        "A purse has one total.",
        say.expect_more_coins(coins > 0) if coins and coins * (one - other) <= 0 else None,
    )
