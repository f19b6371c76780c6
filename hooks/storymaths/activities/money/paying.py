"""Paying: the change from what is handed over, and a price that nobody wrote down."""

from __future__ import annotations

from typing import TYPE_CHECKING

from ...model.activity import Answer, Context, LikelyError, Solution, Task
from ..kind import Unsolvable
from ..saying import capital, listed
from .amount import adding, told, writer
from .bill import bought, solution, sorts, tables_of, taking
from .coins import coins_figure
from .uk_coins import in_fewest_coins

if TYPE_CHECKING:
    from . import MoneyFields


def change(fields: MoneyFields, context: Context) -> Solution:
    """The change from what is paid, counted up from the price, and the fewest coins it can be given in."""
    year = context.year
    amounts, sentences = bought(fields, context)
    price, paid = sum(amounts), sum(fields.paid)
    due = paid - price
    if due < 0:
        message = f"{capital(told(paid, year))} is {told(-due, year)} too little to pay {told(price, year)}."
        raise Unsolvable(("paid",), message, "pay more, or buy less.")
    if len(amounts) > 1:
        sentences.append(adding(amounts, price, year))
    if len(fields.paid) > 1:
        sentences.append(adding(fields.paid, paid, year))
    write = writer([price, paid, due], year)
    sentences.append(f"{write(price)} + {write(due)} = {write(paid)}")
    coins = in_fewest_coins(due)
    given = f", such as {listed([told(coin, year) for coin in coins])}" if 1 < len(coins) <= 6 else ""
    handed = listed([told(coin, year) for coin in fields.paid])
    task = Task(
        f"The shopping is {listed(sorts(fields, context))}. It is paid with {handed}. How much change is there?",
        lines=(f"{write(price)} + ___ = {write(paid)}",) if len(amounts) == 1 else (),
        figures=(coins_figure(fields.paid, "Paid with"),),
    )
    data = {"change": due, "coins": coins[:40]}
    answer = Answer(f"{capital(told(due, year))} change{given}.", ". ".join(sentences) + ".", data)
    note = "The price and the change together are what is paid, so there is one answer."
    steps = len(amounts) + (len(fields.paid) > 1)
    return solution(task, [answer], steps, note, _slip_with_change(price, paid, context), tables_of(fields, context))


def _slip_with_change(price: int, paid: int, context: Context) -> LikelyError | None:
    """Taking column by column, the smaller digit from the larger whichever is on top."""
    width = len(str(paid))
    pairs = zip(f"{paid:0{width}}", f"{price:0{width}}", strict=True)
    wrong = int("".join(str(abs(int(a) - int(b))) for a, b in pairs))
    if wrong == paid - price:
        return None
    return LikelyError("Takes the smaller digit from the larger in each column.", told(wrong, context.year))


def missing(fields: MoneyFields, context: Context) -> Solution:
    """The price of each of some things alike, from what everything came to."""
    year, back = context.year, fields.change or 0
    amounts, sentences = bought(fields, context)
    paid = fields.amount if fields.amount is not None else sum(fields.paid)
    spent, alike = paid - back, fields.alike or 1
    left = spent - sum(amounts)
    if left <= 0 or left % alike:
        reason = f"{capital(told(left, year))} is left for {alike}, which is not a whole number of pence each."
        message = reason if left > 0 else "Nothing is left for what has no price."
        raise Unsolvable(("alike",) if left > 0 else ("find",), message, "change one of the amounts.")
    price = left // alike
    if back:
        sentences.insert(0, taking(paid, [back], spent, context))
    if amounts:
        sentences.append(taking(spent, amounts, left, context))
    if alike > 1:
        write = writer([left, price], year)
        sentences.append(f"{write(left)} ÷ {alike} = {write(price)}")
    bill = f"The shopping is {listed(sorts(fields, context))}, and " if amounts else "The shopping is "
    more = "one thing more" if alike == 1 else f"{alike} things more, all at one price"
    came = (
        f"{told(paid, year)} is paid and {told(back, year)} comes back." if back else f"It comes to {told(paid, year)}."
    )
    what = "What does that one cost?" if alike == 1 else "What does each of those cost?"
    task = Task(f"{bill}{more}. {capital(came)} {what}")
    likely_error = LikelyError("Forgets to share what is left.", told(left, year)) if alike > 1 else None
    says = f"{'It costs' if alike == 1 else 'Each costs'} {told(price, year)}."
    worked = ". ".join(sentences or [f"It is all that was paid, {told(price, year)}"]) + "."
    note = "What is not accounted for is what they cost, so there is one answer."
    tables = [*tables_of(fields, context), *([alike] if 1 < alike <= 12 else [])]
    return solution(task, [Answer(says, worked, {"price": price})], max(1, len(sentences)), note, likely_error, tables)
