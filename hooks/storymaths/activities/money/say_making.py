"""Ways to make an amount, in words."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from ...model.activity import Context, LikelyError, Line
from ..saying import capital, listed, number_word
from .amount import tell
from .coin_ways import Supply
from .coins import count_coins, find_invented, mark_coins, name_form
from .sums import add, write_sum
from .tasks import CoinWay, MakeAmount, MakeInFewest, MakeTask


def ask_for_ways(task: MakeAmount, context: Context) -> str:
    """What is asked where every way is to be found."""
    return f"Make {tell(task.amount, context)}{_with(task.count)}{_from(task, context)}. Find every way."


def ask_for_fewest(task: MakeInFewest, context: Context) -> str:
    """What is asked where the fewest coins are to be found."""
    return f"Make {tell(task.amount, context)}{_from(task, context)} with as few coins as you can."


def leave_gaps(amount: int, gaps: int, context: Context) -> Line:
    """``___ + ___ = 20p``."""
    return Line(("", *[" + "] * (gaps - 1), f" = {tell(amount, context)}"))


def say_way(way: CoinWay, context: Context) -> str:
    """``One 10p coin and two 5p coins``."""
    told = [
        f"{number_word(n)} {tell(worth, context)} {name_form(worth, n, context.money)}"
        for worth, n in Counter(way.coins).items()
    ]
    return capital(listed(told))


def explain_way(way: CoinWay, context: Context) -> str:
    """The sum of the coins."""
    alone = "" if way.count > 1 else f" is one {name_form(way.coins[0], 1, context.money)}"
    return f"{write_sum(add(way.coins), context)}{alone}."


def how_found(found: Sequence[CoinWay], supply: Supply, context: Context) -> str:
    """How one knows that these are all."""
    first, last = (tell(worth, context) for worth in (max(way.coins[0] for way in found), supply.worths[-1]))
    return (
        f"Take as many of {first} as fit, then one fewer each time, and do the same with what is left, "
        f"down to {last}. No way is left out.{_warn_of_invented(supply, context)}"
    )


def why_none(amount: int, count: int | None, supply: Supply, context: Context) -> str:
    """That there is no way."""
    told = f"{capital(tell(amount, context))} cannot be made from these{_with(count)}: every choice was tried."
    return told + _warn_of_invented(supply, context)


def why_fewest(least: int) -> str:
    """That fewer coins do not make it."""
    fewer = "One coin alone cannot" if least == 2 else f"No {count_coins(least - 1)} or fewer can"
    return f"{fewer} make it: every choice was tried."


def expect_error(amount: int, found: Sequence[CoinWay], context: Context) -> LikelyError | None:
    """Counting coins, or taking the same coins for another way."""
    if not found:
        return None
    first = found[0]
    if len(set(first.coins)) == 1:
        gives = f"{first.count} instead of {tell(amount, context)}"
        return LikelyError("Counts the coins and not what they are worth.", gives)
    gives = f"{_join(first.coins[::-1], context)} as well as {_join(first.coins, context)}"
    return LikelyError("Thinks that the same coins in another order are a new way.", gives)


def expect_greed(greedy: Sequence[int], left: int, found: Sequence[CoinWay], context: Context) -> LikelyError | None:
    """Always taking the largest coin that fits: best with most real coins, though not with every set."""
    does = "Always takes the largest coin that fits."
    if found and left:
        return LikelyError(does, f"{_join(greedy, context)}, and then what is left cannot be made")
    if found and len(greedy) > found[0].count:
        return LikelyError(does, f"{_join(greedy, context)}, {count_coins(len(greedy))}")
    return None


def refuse_many(amount: int, limit: int, context: Context) -> tuple[str, str]:
    """That there are too many ways, and what to do."""
    message = f"{capital(tell(amount, context))} can be made in more than {limit} ways."
    return message, 'choose fewer kinds of coin with "coins", a number of coins with "count", or a smaller amount.'


def refuse_large(amount: int, most: int, context: Context) -> tuple[str, str]:
    """That the amount is too large, and what to do."""
    message = f"{capital(tell(amount, context))} is too much to be made coin by coin."
    return message, f"choose a smaller amount, and at most {most} coins."


def _with(count: int | None) -> str:
    return f" with {count_coins(count)}" if count else ""


def _from(task: MakeTask, context: Context) -> str:
    if task.purse:
        return " from the coins in the purse"
    if not task.coins:
        return ""
    kinds = listed([tell(worth, context) for worth in sorted(set(task.coins))])
    return f" from {'coins and notes' if context.money.is_note(max(task.coins)) else 'coins'} of {kinds}"


def _warn_of_invented(supply: Supply, context: Context) -> str:
    strange = [tell(worth, context) for worth in find_invented(supply.worths, context.money)]
    return f" No coin is worth {listed(strange, 'or')} outside the story." if strange else ""


def _join(coins: Sequence[int], context: Context) -> str:
    return " + ".join(mark_coins(coins, context))
