"""Every way to make an amount from coins, and the ways that take the fewest."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from ...model.activity import Answer, Context, LikelyError, Line, Solution, Task
from ...model.demands import Demands, amounts
from ..kind import Unsolvable
from . import say_making as say
from .amount import demands_of_told
from .coin_ways import MOST_COUNT, Supply, TooMuch, fewest, ways
from .coins import draw_coins
from .sums import add, demands_of_sums
from .tasks import CoinWay, MakeAmount, MakeInFewest, MakeTask

_WAYS_DRAWN, _MOST_STEPS, _IN_WORDS = 12, 12, 12


def make(task: MakeAmount, context: Context) -> Solution[CoinWay]:
    """Every way to make the amount: fewest coins first, and among as many, the largest coins first."""
    supply = _supply(task, context)
    found = _find(task.amount, supply, task.count, context)
    note = say.how_found(found, supply, context) if found else say.why_none(task.amount, task.count, supply, context)
    likely = say.expect_error(task.amount, found, context)
    return _solution(task, say.ask_for_ways(task, context), task.count, found, note, likely, context)


def make_in_fewest(task: MakeInFewest, context: Context) -> Solution[CoinWay]:
    """Every way that takes as few coins as can be, the largest coins first."""
    supply = _supply(task, context)
    try:
        least = fewest(task.amount, supply)
    except TooMuch:
        raise _too_much(task.amount, context) from None
    found = [] if least is None else _find(task.amount, supply, least, context)
    if not found:
        note = say.why_none(task.amount, None, supply, context)
    else:
        note = say.why_fewest(found[0].count) if found[0].count > 1 else say.how_found(found, supply, context)
    greedy, left = _take_largest(task.amount, supply)
    likely = say.expect_greed(greedy, left, found, context)
    return _solution(task, say.ask_for_fewest(task, context), None, found, note, likely, context)


def _supply(task: MakeTask, context: Context) -> Supply:
    if task.purse:
        held = Counter(task.purse)
        worths = sorted(held, reverse=True)
        return Supply(tuple(worths), tuple(held[worth] for worth in worths))
    return Supply.endless(sorted(set(task.coins or context.money.coins), reverse=True), task.amount)


def _find(amount: int, supply: Supply, count: int | None, context: Context) -> list[CoinWay]:
    limit = context.caps.answers
    try:
        found = ways(amount, supply, count, limit + 1)
    except TooMuch:
        raise _too_much(amount, context) from None
    if len(found) > limit:
        raise Unsolvable(("amount",), *say.refuse_many(amount, limit, context), "activity-too-many-answers")
    made = [tuple(worth for worth, n in zip(supply.worths, way, strict=True) for _ in range(n)) for way in found]
    made.sort(key=lambda coins: (len(coins), [-worth for worth in coins]))
    return [CoinWay(coins, len(coins)) for coins in made]


def _too_much(amount: int, context: Context) -> Unsolvable:
    return Unsolvable(("amount",), *say.refuse_large(amount, MOST_COUNT, context))


def _take_largest(amount: int, supply: Supply) -> tuple[tuple[int, ...], int]:
    """The coins of always taking the largest that fits, and what is then left."""
    taken: list[int] = []
    for worth, most in zip(supply.worths, supply.most, strict=True):
        count = min(most, amount // worth, MOST_COUNT)
        amount -= count * worth
        taken += [worth] * count
    return tuple(taken), amount


def _solution(
    task: MakeTask,
    ask: str,
    count: int | None,
    found: Sequence[CoinWay],
    note: str,
    likely_error: LikelyError | None,
    context: Context,
) -> Solution[CoinWay]:
    real = [worth for worth in context.money.coins if worth <= task.amount]
    chosen_from = task.purse or sorted(set(task.coins)) or real
    line = say.leave_gaps(task.amount, count or 1, context)
    figures = (draw_coins(chosen_from, "Coins", context),)
    drawn = enumerate(found[:_WAYS_DRAWN], 1)
    return Solution(
        Task(ask, lines=(line,), figures=figures),
        tuple(Answer(say.say_way(way, context), say.explain_way(way, context), way) for way in found),
        _demands(task, line, found, context),
        min(_MOST_STEPS, max((way.count for way in found), default=1) - 1),
        note,
        likely_error,
        tuple(draw_coins(way.coins, f"Way {n}", context) for n, way in drawn),
    )


def _demands(task: MakeTask, line: Line, found: Sequence[CoinWay], context: Context) -> Demands:
    kinds = () if task.purse else task.coins
    coins = {worth for way in found for worth in way.coins}
    many = {n for way in found for n in Counter(way.coins).values() if n > _IN_WORDS}
    signs = {"=", "+"} if line.gaps > 1 else {"="}
    return (
        demands_of_told([task.amount, *kinds, *coins], context, words=("coin",))
        | demands_of_sums([add(way.coins) for way in found], context)
        | Demands(amounts=amounts(many), signs=frozenset(signs))
    )
