"""What an amount can buy: choices from a price list, and how many of one thing."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from ...model.activity import Answer, Context, LikelyError, Solution, Task
from ...model.demands import Demands, amounts
from ..given import need_cast, need_one
from ..kind import Unsolvable, whole_fact
from . import say_buying as say
from .amount import demands_of_told, show
from .baskets import Basket, baskets_for, baskets_within
from .coin_ways import TooMuch
from .sums import Sum, add, demands_of_sums, multiply, take
from .tasks import BuyMany, ChooseThings, HowMany, Purchase

_IN_WORDS, _MOST_STEPS = 12, 12


def choose_things(task: ChooseThings, context: Context) -> Solution[Purchase]:
    """Every choice that can be bought: fewest things first, then in the order of the price list."""
    need_one(task, amount=task.amount, paid=task.paid)
    need_one(task, prices=task.prices, fact=task.fact)
    amount = task.handed_over - (task.change or 0)
    if amount <= 0:
        raise Unsolvable(("amount",) if task.amount else ("paid",), "There is nothing to spend.", "give more.")
    prices = task.prices or _prices_of_cast(task.fact or "", context)
    baskets = _find(task, list(prices.values()), amount, context)
    baskets.sort(key=lambda basket: (sum(basket), [-count for count in basket]))
    of_cast = not task.prices
    names = {one.id: one.name for one in context.characters} if of_cast else {name: name for name in prices}
    answers = [_purchase(basket, prices, amount) for basket in baskets]
    sums = [_sums(basket, prices, amount) for basket in baskets]
    return Solution(
        Task(
            say.ask_to_choose(task, amount, context),
            context.characters if of_cast else (),
            tuple(show(price, context) for price in prices.values()) if of_cast else (),
            (say.leave_gap(amount, context),) if task.spend == "all" else (),
            None if of_cast else say.list_prices(prices, context),
        ),
        tuple(
            Answer(say.say_purchase(one, names), say.explain_purchase(one, own, context), one)
            for one, own in zip(answers, sums, strict=True)
        ),
        _demands(task, amount, prices, baskets, [one for own in sums for one in own], context),
        min(_MOST_STEPS, max(map(sum, baskets), default=1)),
        say.how_chosen(task, amount, bool(baskets), context),
        _expect_dearest(task, amount, prices, names, baskets, context),
    )


def _prices_of_cast(fact: str, context: Context) -> dict[str, int]:
    need_cast(context)
    return whole_fact(context, fact)


def _find(task: ChooseThings, prices: list[int], amount: int, context: Context) -> list[Basket]:
    limit = context.caps.answers
    search = baskets_for if task.spend == "all" else baskets_within
    try:
        found = search(prices, amount, task.choose, task.repeats, limit + 1)
    except TooMuch:
        raise Unsolvable(("prices",), *say.refuse_search(amount, context)) from None
    if len(found) > limit:
        raise Unsolvable(("prices",), *say.refuse_choices(amount, limit, context), "activity-too-many-answers")
    return found


def _purchase(basket: Basket, prices: Mapping[str, int], amount: int) -> Purchase:
    things = tuple(name for name, count in zip(prices, basket, strict=True) for _ in range(count))
    spent = sum(prices[name] for name in things)
    return Purchase(things, spent, amount - spent)


def _sums(basket: Basket, prices: Mapping[str, int], amount: int) -> list[Sum]:
    """What the things come to, where they are few enough to write down, and what is left."""
    one = _purchase(basket, prices, amount)
    sums = [add(prices[name] for name in one.things)] if len(one.things) <= say.MOST_ADDED else []
    return sums + ([take(amount, [one.spent])] if one.left else [])


def _demands(
    task: ChooseThings,
    amount: int,
    prices: Mapping[str, int],
    baskets: Sequence[Basket],
    sums: Sequence[Sum],
    context: Context,
) -> Demands:
    bought = [_purchase(basket, prices, amount) for basket in baskets]
    long_lists = [one.spent for one in bought if len(one.things) > say.MOST_ADDED]
    paid = [task.handed_over, task.change] if task.change else []
    line = Demands(signs=frozenset({"="} if task.spend == "all" else ()))
    many = Demands(amounts=amounts(count for basket in baskets for count in basket if count > _IN_WORDS))
    return (
        demands_of_told([amount, *paid, *prices.values(), *long_lists], context)
        | demands_of_sums(sums, context)
        | line
        | many
    )


def _expect_dearest(
    task: ChooseThings,
    amount: int,
    prices: Mapping[str, int],
    names: Mapping[str, str],
    baskets: Sequence[Basket],
    context: Context,
) -> LikelyError | None:
    """Beginning with the dearest that can be paid for, where nothing that holds it comes out."""
    things = list(prices)
    dearest = max((thing for thing in things if prices[thing] < amount), key=lambda thing: prices[thing], default=None)
    if task.spend != "all" or dearest is None or not baskets:
        return None
    at = things.index(dearest)
    if any(basket[at] for basket in baskets):
        return None
    return say.expect_dearest(names[dearest], amount - prices[dearest], context)


@dataclass(frozen=True, slots=True)
class _Purse:
    """Who has how much."""

    id: str | None
    name: str
    amount: int


def buy_many(task: BuyMany, context: Context) -> Solution[HowMany]:
    """How many of one thing an amount buys, and what is left; or for each of the cast, in order."""
    need_one(task, amount=task.amount, fact=task.fact)
    purses = [_Purse(None, "", task.amount or 0)]
    if task.fact:
        values = _prices_of_cast(task.fact, context)
        purses = [_Purse(one.id, one.name, values[one.id]) for one in context.characters]
    found = [HowMany(*divmod(purse.amount, task.price), purse.id) for purse in purses]
    sums = [_sums_of_many(one, task.price, context) for one in found]
    alone = None if task.fact else purses[0].amount
    over = next((purse.amount for purse in purses if purse.amount % task.price and purse.amount > task.price), 0)
    told = [task.price, *(purse.amount for purse in purses), *(one.left for one in found if one.left)]
    return Solution(
        Task(
            say.ask_how_many(task.price, alone, context),
            context.characters if task.fact else (),
            tuple(show(purse.amount, context) for purse in purses) if task.fact else (),
        ),
        tuple(
            Answer(
                say.say_how_many(one, purse.name, context),
                say.explain_how_many(purse.amount, task.price, own, context),
                one,
            )
            for one, own, purse in zip(found, sums, purses, strict=True)
        ),
        demands_of_told(told, context)
        | demands_of_sums((one for own in sums for one in own), context)
        | Demands(amounts=amounts(one.count for one in found)),
        1 + any(one.left for one in found),
        "One more would cost more than there is.",
        say.expect_rounding(over // task.price) if over else None,
    )


def _sums_of_many(one: HowMany, price: int, context: Context) -> list[Sum]:
    if not one.count:
        return []
    spent = one.count * price
    return [multiply(one.count, price, context)] + ([add([spent, one.left])] if one.left else [])
