"""Every way to make an amount from coins, and the ways that take the fewest."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING

from ...model.activity import Answer, Context, LikelyError, Solution, Task
from ..kind import Unsolvable
from ..met import demands_met
from ..saying import capital, listed, number_word
from .amount import adding, told
from .coin_ways import MOST_COUNT, Supply, TooMuch, fewest, ways
from .coins import WORDS, coin_name, coins_figure, piece, pieces
from .uk_coins import COINS, NOTES, invented

if TYPE_CHECKING:
    from . import MoneyFields

Coins = list[int]
"""What each coin of one way is worth, the largest first."""
_WAYS_DRAWN, _MOST_STEPS = 12, 12


def make(fields: MoneyFields, context: Context) -> Solution:
    """Every way to make the amount: fewest coins first, and among as many, the largest coins first."""
    amount, supply = fields.amount or 1, _supply(fields)
    made = _ways(amount, supply, fields.count, context)
    with_count = f" with {pieces(fields.count)}" if fields.count else ""
    ask = f"Make {told(amount, context.year)}{with_count}{_from(fields, context)}. Find every way."
    likely_error = None
    if made and len(set(made[0])) == 1:
        gives = f"{len(made[0])} in place of {told(amount, context.year)}"
        likely_error = LikelyError("Counts the coins and not what they are worth.", gives)
    elif made:
        gives = f"{_named(made[0][::-1])} as well as {_named(made[0])}"
        likely_error = LikelyError("Thinks that the same coins in another order are a new way.", gives)
    return _solution(fields, context, ask, made, _note(fields, supply, made, context), likely_error)


def make_in_fewest(fields: MoneyFields, context: Context) -> Solution:
    """Every way that takes as few coins as can be, the largest coins first."""
    amount, supply = fields.amount or 1, _supply(fields)
    try:
        least = fewest(amount, supply)
    except TooMuch:
        raise _too_much(amount, context) from None
    made = [] if least is None else _ways(amount, supply, least, context)
    note = _note(fields, supply, made, context)
    if least and least > 1:
        fewer = "One coin alone cannot" if least == 2 else f"No {pieces(least - 1)} or fewer can"
        note = f"{fewer} make it: every choice was tried."
    ask = f"Make {told(amount, context.year)}{_from(fields, context)} with as few coins as you can."
    return _solution(fields, context, ask, made, note, _slip_of_the_greedy(amount, supply, made))


def _supply(fields: MoneyFields) -> Supply:
    if fields.purse:
        held = Counter(fields.purse)
        worths = sorted(held, reverse=True)
        return Supply(tuple(worths), tuple(held[worth] for worth in worths))
    return Supply.endless(sorted(set(fields.coins or COINS), reverse=True), fields.amount or 1)


def _ways(amount: int, supply: Supply, count: int | None, context: Context) -> list[Coins]:
    limit = context.caps.answers
    try:
        found = ways(amount, supply, count, limit + 1)
    except TooMuch:
        raise _too_much(amount, context) from None
    if len(found) > limit:
        message = f"{capital(told(amount, context.year))} can be made in more than {limit} ways."
        fix = 'choose fewer kinds of coin with "coins", a number of coins with "count", or a smaller amount.'
        raise Unsolvable(("amount",), message, fix, "activity-too-many-answers")
    made = [[worth for worth, n in zip(supply.worths, way, strict=True) for _ in range(n)] for way in found]
    return sorted(made, key=lambda coins: (len(coins), [-worth for worth in coins]))


def _too_much(amount: int, context: Context) -> Unsolvable:
    message = f"{capital(told(amount, context.year))} is too much to be made coin by coin."
    return Unsolvable(("amount",), message, f"choose a smaller amount, and at most {MOST_COUNT} coins.")


def _note(fields: MoneyFields, supply: Supply, made: list[Coins], context: Context) -> str:
    strange = [coin_name(worth) for worth in invented(supply.worths)]
    known = f" No coin is worth {listed(strange, 'or')} outside the story." if strange else ""
    if not made:
        with_count = f" with {pieces(fields.count)}" if fields.count else ""
        amount = capital(told(fields.amount or 1, context.year))
        return f"{amount} cannot be made from these{with_count}: every choice was tried.{known}"
    first, last = max(max(coins) for coins in made), min(supply.worths)
    return (
        f"Take as many of {coin_name(first)} as fit, then one fewer each time, and do the same with what is left, "
        f"down to {coin_name(last)}. No way is left out.{known}"
    )


def _from(fields: MoneyFields, context: Context) -> str:
    if fields.purse:
        return " from the coins in the purse"
    if not fields.coins:
        return ""
    kinds = listed([told(worth, context.year) for worth in sorted(set(fields.coins))])
    return f" from {'coins and notes' if max(fields.coins) >= NOTES[0] else 'coins'} of {kinds}"


def _named(coins: Coins) -> str:
    return " + ".join(coin_name(worth) for worth in coins)


def _slip_of_the_greedy(amount: int, supply: Supply, made: list[Coins]) -> LikelyError | None:
    """Always taking the largest coin that fits: best with real coins, though not with every set."""
    does, left = "Always takes the largest coin that fits.", amount
    taken: Coins = []
    for worth, most in zip(supply.worths, supply.most, strict=True):
        count = min(most, left // worth, MOST_COUNT)
        left -= count * worth
        taken += [worth] * count
    if made and left:
        return LikelyError(does, f"{_named(taken)}, and then what is left cannot be made")
    if made and len(taken) > len(made[0]):
        return LikelyError(does, f"{_named(taken)}, {pieces(len(taken))}")
    return None


def _solution(
    fields: MoneyFields, context: Context, ask: str, made: list[Coins], note: str, likely_error: LikelyError | None
) -> Solution:
    amount, year = fields.amount or 1, context.year
    answers = []
    for coins in made:
        numbers = Counter(coins)
        says = listed([f"{number_word(n)} {told(worth, year)} {piece(worth, n)}" for worth, n in numbers.items()])
        worked = f"{adding(coins, amount, year)}{'' if len(coins) > 1 else f' is one {piece(amount, 1)}'}."
        answers.append(Answer(capital(says), worked, {"coins": coins, "count": len(coins)}))
    chosen_from = fields.purse or sorted(set(fields.coins)) or [worth for worth in COINS if worth <= amount]
    gaps = " + ".join(["___"] * (fields.count or 1))
    task = Task(ask, lines=(f"{gaps} = {told(amount, year)}",), figures=(coins_figure(chosen_from, "Coins"),))
    steps = min(_MOST_STEPS, max((len(coins) for coins in made), default=1) - 1)
    drawn = tuple(coins_figure(coins, f"Way {i}") for i, coins in enumerate(made[:_WAYS_DRAWN], 1))
    return Solution(task, tuple(answers), demands_met(task, answers, WORDS), steps, note, likely_error, drawn)
