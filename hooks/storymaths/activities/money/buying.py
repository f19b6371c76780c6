"""What an amount can buy: choices from a price list, and how many of one thing."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import islice
from typing import TYPE_CHECKING

from ...model.activity import Answer, Context, LikelyError, Solution, Table, Task
from ..kind import Unsolvable, whole_fact
from ..saying import capital, listed, number_word
from .amount import adding, told, writer
from .bill import solution, taking, times
from .coin_ways import Supply, TooMuch, ways

if TYPE_CHECKING:
    from . import MoneyFields

Basket = tuple[int, ...]
"""How many of each thing, in the order of the price list."""
_MOST_TRIED = 200_000


@dataclass(frozen=True, slots=True)
class _Thing:
    """A line of the price list; ``id`` is what answers call it."""

    id: str
    name: str
    price: int


def buy(fields: MoneyFields, context: Context) -> Solution:
    """Every choice that can be bought: fewest things first, then in the order of the price list."""
    things, exactly = _price_list(fields, context), fields.spend == "all"
    paid = fields.amount if fields.amount is not None else sum(fields.paid)
    amount, year = paid - (fields.change or 0), context.year
    if amount <= 0:
        raise Unsolvable(("amount",) if fields.amount else ("paid",), "There is nothing to spend.", "give more.")
    baskets = _baskets(fields, [thing.price for thing in things], amount, context)
    baskets.sort(key=lambda basket: (sum(basket), [-count for count in basket]))
    answers = [_bought(basket, things, amount, context) for basket in baskets]
    rows = tuple((thing.name, told(thing.price, year)) for thing in things)
    of_cast = not fields.prices
    task = Task(
        _asked(fields, amount, context),
        context.characters if of_cast else (),
        tuple(price for _, price in rows) if of_cast else (),
        (f"___ = {told(amount, year)}",) if exactly else (),
        None if of_cast else Table("Prices", ("Thing", "Price"), rows),
    )
    note = "Every choice was tried, with the first thing on the list and without it, then the next, and so on."
    if not answers:
        note = f"No choice comes to {'' if exactly else 'as little as '}{told(amount, year)}. {note}"
    steps = min(12, max((sum(basket) for basket in baskets), default=1))
    return solution(task, answers, steps, note, _slip_with_dearest(things, baskets, amount, exactly, context))


def _price_list(fields: MoneyFields, context: Context) -> list[_Thing]:
    if not fields.prices:
        values = whole_fact(context, fields.fact or "")
        return [_Thing(character.id, character.name, values[character.id]) for character in context.characters]
    return [_Thing(name, name, price) for name, price in fields.prices.items()]


def _baskets(fields: MoneyFields, prices: list[int], amount: int, context: Context) -> list[Basket]:
    limit = context.caps.answers
    try:
        if fields.spend == "all":
            supply = Supply(tuple(prices), tuple(amount // price if fields.repeats else 1 for price in prices))
            found = ways(amount, supply, fields.choose, limit + 1)
        else:
            found = list(islice(_Within(prices, fields.repeats).baskets(0, amount, fields.choose), limit + 1))
    except TooMuch:
        message = f"With {told(amount, context.year)} there is too much to try."
        raise Unsolvable(("prices",), message, 'say how many things with "choose", or shorten the list.') from None
    if len(found) > limit:
        message = f"There are more than {limit} choices for {told(amount, context.year)}."
        fix = 'say how many things with "choose", shorten the list, or take a smaller amount.'
        raise Unsolvable(("prices",), message, fix, "activity-too-many-answers")
    return found


class _Within:
    """Every basket of something that costs no more than an amount, each met once."""

    def __init__(self, prices: list[int], repeats: bool) -> None:
        self._prices, self._repeats, self._tried = prices, repeats, 0

    def baskets(self, kind: int, left: int, choose: int | None, empty: bool = True) -> Iterator[Basket]:
        """Endings of a basket from one line of the price list on. Raises ``TooMuch`` after too many tries."""
        self._tried += 1
        if self._tried > _MOST_TRIED:
            raise TooMuch
        if kind == len(self._prices):
            if not choose and not empty:
                yield ()
            return
        most = left // self._prices[kind] if self._repeats else int(left >= self._prices[kind])
        for taken in range(most if choose is None else min(most, choose), -1, -1):
            rest = None if choose is None else choose - taken
            spare = left - taken * self._prices[kind]
            for ending in self.baskets(kind + 1, spare, rest, empty and not taken):
                yield taken, *ending


def _asked(fields: MoneyFields, amount: int, context: Context) -> str:
    exactly, money = fields.spend == "all", told(amount, context.year)
    many = f"{number_word(fields.choose)} " if fields.choose else ""
    if not fields.prices:
        about = context.facts.get(fields.fact or "")
        who = f"Which {many}come" if many else "Whose come"
        limit = "exactly" if exactly else "no more than"
        return f"The cards show the {about.means if about else fields.fact} of each. {who} to {limit} {money}? Find every way."
    opening = f"There is {money} to spend{', all of it' if exactly else ''}."
    if fields.change:
        paid, back = told(amount + fields.change, context.year), told(fields.change, context.year)
        opening = f"{capital(paid)} is paid and {back} comes back."
    how = "A thing may be bought more than once." if fields.repeats else "Nothing is bought twice."
    return f"{opening} {how} Which {many}things could be bought? Find every way."


def _bought(basket: Basket, things: list[_Thing], amount: int, context: Context) -> Answer:
    chosen = [(thing, count) for thing, count in zip(things, basket, strict=True) if count]
    said = listed([thing.name if count == 1 else f"{number_word(count)} times {thing.name}" for thing, count in chosen])
    each = [thing for thing, count in chosen for _ in range(count)]
    spent = sum(thing.price for thing in each)
    worked = f"It comes to {told(spent, context.year)}"
    if len(each) <= 12:
        worked = adding([thing.price for thing in each], spent, context.year)
    if spent < amount:
        worked += f". {taking(amount, [spent], amount - spent, context)}"
    data = {"things": [thing.id for thing in each], "spent": spent, "left": amount - spent}
    return Answer(capital(said), worked + ".", data)


def _slip_with_dearest(
    things: list[_Thing], baskets: list[Basket], amount: int, exactly: bool, context: Context
) -> LikelyError | None:
    """Beginning with the dearest that can be paid for, where nothing that holds it comes out."""
    dearest = max(
        (i for i, thing in enumerate(things) if thing.price < amount), key=lambda i: things[i].price, default=None
    )
    if not exactly or dearest is None or not baskets or any(basket[dearest] for basket in baskets):
        return None
    left = told(amount - things[dearest].price, context.year)
    return LikelyError(
        f"Starts with {things[dearest].name}, the dearest, and keeps to it.", f"{left} that cannot be spent"
    )


def how_many(fields: MoneyFields, context: Context) -> Solution:
    """How many of one thing an amount buys, and what is left; or for each of the cast, in order."""
    price, year = fields.price or 1, context.year
    purses = [("", "", fields.amount or 0)]
    if fields.fact:
        values = whole_fact(context, fields.fact)
        purses = [(character.id, character.name, values[character.id]) for character in context.characters]
    answers = []
    for id_, name, amount in purses:
        count, left = divmod(amount, price)
        who = f"{name} can buy" if name else "There is enough for"
        rest = f", with {told(left, year)} left" if left else ""
        data = {"count": count, "left": left} | ({"player": id_} if id_ else {})
        says = capital(f"{who} {count:,}{rest}.")
        answers.append(Answer(says, _paid_for(amount, price, context), data))
    have = "Each has the money shown." if fields.fact else f"There is {told(purses[0][2], year)}."
    task = Task(
        f"One costs {told(price, year)}. {have} How many can be bought?",
        context.characters if fields.fact else (),
        tuple(told(amount, year) for _, _, amount in purses) if fields.fact else (),
    )
    over = next((amount for _, _, amount in purses if amount % price and amount > price), 0)
    likely_error = None
    if over:
        gives = f"{over // price + 1:,} in place of {over // price:,}"
        likely_error = LikelyError("Rounds up, so that the last one is not paid for.", gives)
    tables = [price] if 1 < price <= 12 and year.year >= 2 else []
    steps = 1 + any(amount % price for _, _, amount in purses)
    return solution(task, answers, steps, "One more would cost more than there is.", likely_error, tables)


def _paid_for(amount: int, price: int, context: Context) -> str:
    count, left = divmod(amount, price)
    if not count:
        return f"{capital(told(amount, context.year))} is less than {told(price, context.year)}."
    spent = count * price
    sentences = [times(count, price, context)]
    if left:
        write = writer([spent, left, amount], context.year)
        sentences.append(f"{write(spent)} + {write(left)} = {write(amount)}")
    return ". ".join(sentences) + "."
