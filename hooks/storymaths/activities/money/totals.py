"""Money in all, and which of two purses holds more."""

from __future__ import annotations

from typing import TYPE_CHECKING

from ...model.activity import Answer, Context, LikelyError, Solution, Task
from ..kind import Unsolvable
from ..saying import capital, listed
from .amount import adding, brief, told, writer
from .bill import LOTS, bought, solution, sorts, tables_of, taking
from .coins import coins_figure

if TYPE_CHECKING:
    from . import MoneyFields


def total(fields: MoneyFields, context: Context) -> Solution:
    """What there is in all, less what goes."""
    year = context.year
    amounts, sentences = bought(fields, context)
    together, gone = sum(amounts), sum(fields.less)
    left = together - gone
    if not amounts or left < 0:
        message = "There is no money to add up." if not amounts else "More is taken away than there is."
        raise Unsolvable(("less",) if amounts else ("start",), message, "have more to begin with.")
    if len(amounts) > 1:
        sentences.append(adding(amounts, together, year))
    if gone:
        sentences.append(taking(together, fields.less, left, context))
    then = f" Then {listed([brief(n, year) for n in fields.less])} goes." if gone else ""
    task = Task(
        f"The money is {listed(sorts(fields, context, LOTS))}.{then} How much is it in all?",
        lines=(_gap(fields, amounts, context),),
        figures=(coins_figure(fields.purse, "Coins"),) if fields.purse else (),
    )
    said = told(left, year)
    likely_error = None
    if fields.purse and left != len(fields.purse):
        likely_error = LikelyError(
            "Counts the coins and not what they are worth.", f"{len(fields.purse)} in place of {said}"
        )
    elif several := [(count, each) for count, each in fields.items if count > 1]:
        once = left - sum((count - 1) * each for count, each in several)
        likely_error = LikelyError("Adds one of each sort in place of all.", told(once, year)) if once > 0 else None
    worked = ". ".join(sentences or [f"There is {said} and nothing more"]) + "."
    answer = Answer(f"There is {said}.", worked, {"total": left})
    steps = max(1, len(amounts) - 1 + len(fields.less) + sum(count > 1 for count, _ in fields.items))
    note = "Amounts added in any order come to the same, so there is one answer."
    return solution(task, [answer], steps, note, likely_error, tables_of(fields, context))


def _gap(fields: MoneyFields, amounts: list[int], context: Context) -> str:
    write = writer([*amounts, *(each for _, each in fields.items), *fields.less], context.year)
    parts = [write(fields.start)] if fields.start else []
    for count, each in fields.items:
        adds = [write(each)] * count if context.year.year < 2 and count <= 8 else [f"{count:,} × {write(each)}"]
        parts += adds if count > 1 else [write(each)]
    parts += [write(worth) for worth in [*(fields.prices or {}).values(), *fields.purse]]
    return " − ".join([" + ".join(parts), *map(write, fields.less)]) + " = ___"


def compare(fields: MoneyFields, context: Context) -> Solution:
    """Which of two purses holds more, and how much more."""
    year = context.year
    one, other = sum(fields.purse), sum(fields.other)
    more, less = max(one, other), min(one, other)
    sentences = [adding(purse, sum(purse), year) for purse in (fields.purse, fields.other) if len(purse) > 1]
    if more > less:
        sentences.append(taking(more, [less], more - less, context))
    which = "same" if one == other else "first" if one > other else "second"
    says = "Both hold the same." if one == other else f"The {which} holds {told(more - less, year)} more."
    purses = (("first", fields.purse), ("second", fields.other))
    task = Task(
        "Which purse holds more money, and how much more?",
        lines=tuple(f"The {name}: {listed([brief(worth, year) for worth in purse])}" for name, purse in purses),
        figures=tuple(coins_figure(purse, f"The {name} purse") for name, purse in purses),
    )
    coins = len(fields.purse) - len(fields.other)
    likely_error = None
    if coins and coins * (one - other) <= 0:
        likely_error = LikelyError(
            "Thinks that more coins are more money.", f"the {'first' if coins > 0 else 'second'} purse"
        )
    worked = capital(". ".join(sentences or [f"both are {told(one, year)}"])) + "."
    answer = Answer(says, worked, {"more": which, "difference": more - less})
    return solution(task, [answer], len(fields.purse) + len(fields.other) - 1, "A purse has one total.", likely_error)
