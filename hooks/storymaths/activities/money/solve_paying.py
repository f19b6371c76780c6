"""Paying: the change from what is handed over, and a price that nobody wrote down."""

from __future__ import annotations

from ...model.activity import Answer, Context, LikelyError, Solution, Task
from ...model.demands import Demands, amounts
from ..given import need_one, need_some
from ..kind import Unsolvable
from . import say_paying as say
from .amount import demands_of_told
from .bill import Bill, add_up, demands_of_bill, multiply_lots
from .coins import draw_coins, pay_in_fewest
from .sums import Sum, add, demands_of_sums, divide, take
from .tasks import ChangeDue, FindPrice, GiveChange, Price

_MOST_LISTED = 40


def give_change(task: GiveChange, context: Context) -> Solution[ChangeDue]:
    """The change from what is paid, counted up from the price, and the fewest coins it can be given in."""
    need_some(task, items=task.items, prices=task.prices)
    bill, paid = task.bill, sum(task.paid)
    sums = add_up(bill, context)
    price, due = bill.total, paid - bill.total
    if due < 0:
        raise Unsolvable(("paid",), *say.refuse_payment(paid, price, context))
    if len(task.paid) > 1:
        sums.append(add(task.paid))
    count_up = add([price, due])
    sums.append(count_up)
    coins = pay_in_fewest(due, context.money)
    answer = ChangeDue(due, coins[:_MOST_LISTED])
    listed = coins if say.lists_coins(coins) else ()
    return Solution(
        Task(
            say.ask_for_change(task, context),
            lines=(say.leave_gap(count_up, context),) if len(bill.amounts) == 1 else (),
            figures=(draw_coins(task.paid, "Paid with", context),),
        ),
        (Answer(say.say_change(due, coins, context), say.explain(sums, context), answer),),
        demands_of_bill(bill, context)
        | demands_of_told([*task.paid, due, *listed], context)
        | demands_of_sums(sums, context),
        len(bill.amounts) + (len(task.paid) > 1),
        "The price and the change together are what was paid.",
        _expect_columns(price, paid, context),
    )


def _expect_columns(price: int, paid: int, context: Context) -> LikelyError | None:
    """Taking column by column, the smaller digit from the larger; from whole pounds, a ten too many in the tens."""
    if paid % 100 == 0 and price % 10:
        return say.expect_ten_too_many(paid - price + 10, context)
    width = len(str(paid))
    pairs = zip(f"{paid:0{width}}", f"{price:0{width}}", strict=True)
    wrong = int("".join(str(abs(int(a) - int(b))) for a, b in pairs))
    return None if wrong == paid - price else say.expect_columns(wrong, context)


def find_price(task: FindPrice, context: Context) -> Solution[Price]:
    """The price of each of some things alike, from what everything came to."""
    need_one(task, amount=task.amount, paid=task.paid)
    bill, back, alike = task.bill, task.change or 0, task.alike or 1
    spent = task.handed_over - back
    lots = multiply_lots(bill, context)
    left = spent - bill.total
    if left <= 0:
        raise Unsolvable(("find",), "Nothing is left for what has no price.", "change one of the amounts.")
    if left % alike:
        raise Unsolvable(("alike",), *say.refuse_shares(left, alike, context))
    sums = _sums_to_price(task.handed_over, back, bill, lots, alike)
    price = left // alike
    return Solution(
        Task(say.ask_for_price(task, context)),
        (Answer(say.say_price(price, alike, context), say.explain_price(sums, price, context), Price(price)),),
        demands_of_bill(bill, context)
        | demands_of_told([task.handed_over, *([back] if back else []), price], context)
        | demands_of_sums(sums, context)
        | Demands(amounts=amounts([alike] if alike > 1 else [])),
        max(1, len(sums)),
        "Take what is known from what was paid: the rest is what they cost.",
        say.expect_unshared(left, context) if alike > 1 else None,
    )


def _sums_to_price(paid: int, back: int, bill: Bill, lots: list[Sum], alike: int) -> list[Sum]:
    spent = paid - back
    sums = [take(paid, [back])] if back else []
    sums += lots
    if bill.amounts:
        sums.append(take(spent, bill.amounts))
    if alike > 1:
        sums.append(divide(spent - bill.total, alike))
    return sums
