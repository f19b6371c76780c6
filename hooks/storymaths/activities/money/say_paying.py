"""Change and missing prices, in words."""

from __future__ import annotations

from collections.abc import Sequence

from ...model.activity import Context, LikelyError, Line
from ..saying import capital, listed
from .amount import notation_for, tell
from .bill import list_bill
from .sums import Sum, write_sums
from .tasks import FindPrice, GiveChange

_MOST_TOLD = 6


def ask_for_change(task: GiveChange, context: Context) -> str:
    """What is bought and handed over."""
    handed = listed([tell(coin, context) for coin in task.paid])
    return f"The shopping is {list_bill(task.bill, context)}. It is paid with {handed}. How much change is there?"


def leave_gap(count_up: Sum, context: Context) -> Line:
    """``65p + ___ = 80p``."""
    write = notation_for([*count_up.amounts, count_up.result], context).write
    return Line((f"{write(count_up.amounts[0])} + ", f" = {write(count_up.result)}"))


def say_change(due: int, coins: Sequence[int], context: Context) -> str:
    """``15p change, such as 10p and 5p``."""
    given = f", such as {listed([tell(coin, context) for coin in coins])}" if lists_coins(coins) else ""
    return f"{capital(tell(due, context))} change{given}"


def lists_coins(coins: Sequence[int]) -> bool:
    """Whether the coins of the change are few enough to be listed, and not one alone."""
    return 1 < len(coins) <= _MOST_TOLD


def explain(sums: Sequence[Sum], context: Context) -> str:
    """The sums that lead to it."""
    return write_sums(sums, context) + "."


def expect_columns(wrong: int, context: Context) -> LikelyError:
    """Taking the smaller digit from the larger."""
    return LikelyError("Takes the smaller digit from the larger in each column.", tell(wrong, context))


def expect_ten_too_many(wrong: int, context: Context) -> LikelyError:
    """Making ten of the tens as well as of the ones."""
    return LikelyError("Makes ten with the ones, and ten again with the tens.", tell(wrong, context))


def refuse_payment(paid: int, price: int, context: Context) -> tuple[str, str]:
    """That too little is paid, and what to do."""
    short = tell(price - paid, context)
    message = f"{capital(tell(paid, context))} is {short} too little to pay {tell(price, context)}."
    return message, "pay more, or buy less."


def ask_for_price(task: FindPrice, context: Context) -> str:
    """What is bought, what it came to, and which price is asked for."""
    alike, back = task.alike or 1, task.change or 0
    bill = f"The shopping is {list_bill(task.bill, context)}, and " if task.bill.amounts else "The shopping is "
    more = "one thing more" if alike == 1 else f"{alike} things more, all at one price"
    paid = tell(task.handed_over, context)
    came = f"{paid} is paid and {tell(back, context)} comes back." if back else f"It comes to {paid}."
    what = "What does that one cost?" if alike == 1 else "What does each of those cost?"
    return f"{bill}{more}. {capital(came)} {what}"


def say_price(price: int, alike: int, context: Context) -> str:
    """``Each costs 20p``."""
    return f"{'It costs' if alike == 1 else 'Each costs'} {tell(price, context)}"


def explain_price(sums: Sequence[Sum], price: int, context: Context) -> str:
    """The sums that lead to it, if there are any."""
    return explain(sums, context) if sums else f"It is all that was paid, {tell(price, context)}."


def expect_unshared(left: int, context: Context) -> LikelyError:
    """Forgetting that several things share the price."""
    return LikelyError("Forgets to share what is left.", tell(left, context))


def refuse_shares(left: int, alike: int, context: Context) -> tuple[str, str]:
    """That the price would not be whole, and what to do."""
    parts = context.money.part.many
    message = f"{capital(tell(left, context))} is left for {alike}, which is not a whole number of {parts} each."
    return message, "change one of the amounts."
