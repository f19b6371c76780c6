"""Fares, prices and coins of the story."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from ...activities.saying import counted, listed
from ...model.plain import Plain
from ...model.year import YearLimits
from ..candidate import Candidate, Candidates, activity
from ..idea import FromStory
from ..material import Material, NumberFact
from .seed import Seed

_FEW = range(2, 7)
_MOST_AMOUNTS, _MOST_COINS, _BUYS = 3, 6, 3


def _plant(material: Material, limits: YearLimits) -> Candidates:
    prices = [one for one in material.measured if one.kind == "money" and one.unit == "p"]
    facts = material.of("money")
    if not (prices or facts or material.notes("money")):
        return
    purses = [fact for fact in facts if set(fact.values.values()) <= set(material.coins)]
    amounts = {one.number: FromStory(f"{one.number} pence", one.pages) for one in prices if one.number > 1}
    for fact in facts:
        if fact not in purses or len(fact.who) > _MOST_COINS:
            yield from _who_pays(fact, [*amounts])
    for fact in purses:
        purse = sorted(fact.values.values(), reverse=True)
        told: list[Plain] = [*purse]
        use = FromStory(fact.means)
        ask = "How much is in the tin when all the coins are together?"
        yield Candidate(activity("money", "All the coins together", ask, find="total", purse=told), (use,))
        for amount, where in list(amounts.items())[:_MOST_AMOUNTS]:
            ask = f"Pay {counted(amount, 'pence')} exactly with these coins. Find every way."
            lines = activity("money", f"{amount} pence from the coins", ask, find="ways", amount=amount, purse=told)
            yield Candidate(lines, (use, where), finds=True)
    yield from _with_any_coins(amounts or _worth(facts), limits)


def _worth(facts: tuple[NumberFact, ...]) -> dict[int, FromStory]:
    return {value: FromStory(fact.means) for fact in facts for value in fact.values.values() if value > 1}


def _with_any_coins(amounts: dict[int, FromStory], limits: YearLimits) -> Iterator[Candidate]:
    """Every way to make an amount with as many of a few coins as are wanted; change; how many can be bought."""
    for amount, where in list(amounts.items())[:_MOST_AMOUNTS]:
        for coins in limits.practice.money.coins:
            told: list[Plain] = [coin for coin in coins if coin <= amount]
            ask = f"Pay {counted(amount, 'pence')} exactly. Every coin is worth {_named(told)}. Find every way."
            if len(told) > 1:
                lines = activity("money", f"Ways to pay {amount} pence", ask, find="ways", amount=amount, coins=told)
                yield Candidate(lines, (where,), finds=True)
        note = next((coin for coin in (10, 20, 50, 100) if coin > amount), None)
        if note:
            ask = f"It costs {counted(amount, 'pence')}, and you pay with {note} pence. What is the change?"
            lines = activity("money", f"Change from {note} pence", ask, find="change", items=[[1, amount]], paid=[note])
            yield Candidate(lines, (where,))
        purse = next((coin for coin in (10, 20, 50, 100) if coin >= _BUYS * amount), None)
        if purse:
            ask = f"One costs {counted(amount, 'pence')}. How many can you buy with {purse} pence?"
            lines = activity("money", f"Buying with {purse} pence", ask, find="how_many", amount=purse, price=amount)
            yield Candidate(lines, (where,))


def _named(coins: list[Plain]) -> str:
    return listed([str(coin) for coin in coins], "or")


def _who_pays(fact: NumberFact, amounts: list[int]) -> Iterator[Candidate]:
    """Two or three who pay an amount exactly; one of the story's amounts where it has a few ways."""
    who = [one for one in fact.who if fact.values[one.id] > 0]
    for many, word in ((3, "three"), (2, "two")):
        ways: dict[int, int] = {}
        for group in combinations(who, many):
            total = sum(fact.values[one.id] for one in group)
            ways[total] = ways.get(total, 0) + 1
        fitting = [total for total in (*amounts, *sorted(ways, reverse=True)) if ways.get(total, 0) in _FEW]
        for amount in fitting[:1]:
            ask = f"{word.capitalize()} of them pay exactly {counted(amount, 'pence')} together. Who could they be? Find every way."
            cast: list[Plain] = [one.id for one in who]
            lines = activity(
                "money", f"{word.capitalize()} for {amount} pence", ask,
                find="buy", amount=amount, fact=fact.id, choose=many, cast=cast,
            )  # fmt: skip
            yield Candidate(lines, (FromStory(fact.means),), finds=True)


SEED = Seed("money: a price, a fare, or coins", _plant)
