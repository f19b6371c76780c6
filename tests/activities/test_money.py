"""Money, held against dynamic programming and against trying every choice."""

from __future__ import annotations

from collections import Counter
from itertools import combinations, combinations_with_replacement, product

import pytest
import yaml
from activities.trials import answers_of, first_version, fits, never_breaks, read, refused, solved, spoilt
from hypothesis import given, settings
from hypothesis import strategies as st
from storymaths.activities.kind import Unsolvable
from storymaths.activities.money import KIND
from storymaths.activities.money.uk_coins import COINS, MONEY, in_fewest_coins

SOME_COINS = st.lists(st.integers(1, 30), min_size=1, max_size=5, unique=True)
PURSES = st.lists(st.sampled_from([1, 2, 5, 10, 20, 50]), min_size=1, max_size=9)


def ways_by_table(amount: int, coins: list[int]) -> int:
    """How many ways, by adding up the ways to make less, a coin at a time."""
    table = [1] + [0] * amount
    for coin in coins:
        for made in range(coin, amount + 1):
            table[made] += table[made - coin]
    return table[amount]


def fewest_by_table(amount: int, coins: list[int]) -> int | None:
    """The fewest coins, from the fewest for every smaller amount."""
    table: list[int | None] = [0]
    for made in range(1, amount + 1):
        before = [table[made - coin] for coin in coins if coin <= made]
        table.append(min((few + 1 for few in before if few is not None), default=None))
    return table[amount]


def test_the_example_is_a_year_2_lesson() -> None:
    solution = solved(KIND, KIND.example)
    assert [answer.data["things"] for answer in solution.answers] == [
        ["gull", "seal"], ["gull", "crab", "puffin"], ["crab", "seal", "whelk"]
    ]  # fmt: skip
    assert fits(solution, 2)


@given(st.integers(1, 120), SOME_COINS)
@settings(max_examples=120, deadline=None)
def test_there_are_as_many_ways_as_the_table_counts(amount: int, coins: list[int]) -> None:
    expected = ways_by_table(amount, coins)
    data = {"find": "ways", "amount": amount, "coins": coins}
    if expected > 500:
        refused(KIND, data, rule="activity-too-many-answers")
        return
    found = [tuple(answer["coins"]) for answer in answers_of(KIND, data)]
    assert len(found) == expected == len(set(map(tuple, map(sorted, found))))
    assert all(sum(way) == amount and set(way) <= set(coins) for way in found)
    assert [len(way) for way in found] == sorted(len(way) for way in found)


@given(st.integers(1, 60), st.integers(1, 6))
@settings(max_examples=60, deadline=None)
def test_ways_with_so_many_coins_are_those_of_every_choice(amount: int, count: int) -> None:
    expected = {way for way in combinations_with_replacement(COINS[::-1], count) if sum(way) == amount}
    found = answers_of(KIND, {"find": "ways", "amount": amount, "count": count})
    assert {tuple(answer["coins"]) for answer in found} == expected
    assert len(found) == len(expected)


@given(st.integers(1, 100), PURSES)
@settings(max_examples=80, deadline=None)
def test_ways_from_a_purse_are_those_of_every_handful(amount: int, purse: list[int]) -> None:
    handfuls = {
        tuple(sorted(hand, reverse=True))
        for n in range(1, len(purse) + 1)
        for hand in combinations(purse, n)
        if sum(hand) == amount
    }
    data = {"amount": amount, "purse": purse}
    assert {tuple(answer["coins"]) for answer in answers_of(KIND, {"find": "ways", **data})} == handfuls
    least = min(map(len, handfuls), default=0)
    few = {tuple(answer["coins"]) for answer in answers_of(KIND, {"find": "fewest", **data})}
    assert few == {hand for hand in handfuls if len(hand) == least}


@given(st.integers(1, 150), SOME_COINS)
@settings(max_examples=80, deadline=None)
def test_the_fewest_coins_are_as_few_as_the_table_says(amount: int, coins: list[int]) -> None:
    expected = fewest_by_table(amount, coins)
    found = answers_of(KIND, {"find": "fewest", "amount": amount, "coins": coins})
    if expected is None or expected > 50:
        assert not found
    else:
        assert found
        assert all(answer["count"] == expected and sum(answer["coins"]) == amount for answer in found)


def test_taking_the_largest_coin_is_best_with_real_money() -> None:
    for amount in range(1, 600):
        assert len(in_fewest_coins(amount)) == fewest_by_table(amount, sorted(MONEY))


def test_a_set_of_coins_where_taking_the_largest_is_not_best() -> None:
    solution = solved(KIND, {"find": "fewest", "amount": 6, "coins": [1, 3, 4]})
    assert [answer.data["coins"] for answer in solution.answers] == [[3, 3]]
    assert solution.likely_error is not None
    assert "4p + 1p + 1p" in solution.likely_error.gives


@given(st.lists(st.integers(1, 60), min_size=1, max_size=6), st.integers(1, 90), st.booleans(), st.integers(0, 3))
@settings(max_examples=120, deadline=None)
def test_what_can_be_bought_is_what_trying_every_basket_finds(
    prices: list[int], amount: int, within: bool, choose: int
) -> None:
    names = [f"thing {chr(97 + i)}" for i in range(len(prices))]
    expected = set()
    for basket in product((0, 1), repeat=len(prices)):
        cost = sum(n * price for n, price in zip(basket, prices, strict=True))
        if any(basket) and (cost <= amount if within else cost == amount) and choose in (0, sum(basket)):
            expected.add(tuple(name for name, n in zip(names, basket, strict=True) if n))
    data = {"find": "buy", "amount": amount, "prices": dict(zip(names, prices, strict=True))}
    data |= {"spend": "within"} if within else {}
    data |= {"choose": choose} if choose else {}
    found = answers_of(KIND, data)
    assert {tuple(answer["things"]) for answer in found} == expected
    assert len(found) == len(expected)
    assert all(answer["spent"] + answer["left"] == amount for answer in found)


@given(st.lists(st.integers(5, 40), min_size=1, max_size=3), st.integers(1, 60), st.booleans())
@settings(max_examples=60, deadline=None)
def test_baskets_with_repeats_are_those_of_every_count(prices: list[int], amount: int, within: bool) -> None:
    names = [f"thing {chr(97 + i)}" for i in range(len(prices))]
    expected = Counter()
    for basket in product(range(amount // 5 + 1), repeat=len(prices)):
        cost = sum(n * price for n, price in zip(basket, prices, strict=True))
        if any(basket) and (cost <= amount if within else cost == amount):
            expected[tuple(name for name, n in zip(names, basket, strict=True) for _ in range(n))] += 1
    data = {"find": "buy", "amount": amount, "prices": dict(zip(names, prices, strict=True)), "repeats": True}
    data |= {"spend": "within"} if within else {}
    if len(expected) <= 500:
        assert Counter(tuple(answer["things"]) for answer in answers_of(KIND, data)) == expected


@given(st.integers(1, 2000), st.integers(1, 2000), st.integers(2, 6))
@settings(max_examples=60, deadline=None)
def test_change_counted_up_by_pennies(price: int, more: int, year: int) -> None:
    paid = price + more
    [answer] = answers_of(KIND, {"find": "change", "items": [[1, price]], "paid": [paid]}, year)
    assert answer["change"] == len(range(price, paid)) == sum(answer["coins"])
    [missing] = answers_of(KIND, {"find": "missing", "paid": [paid], "change": answer["change"]}, year)
    assert missing["price"] == price
    [many] = answers_of(KIND, {"find": "how_many", "amount": paid, "price": price}, year)
    assert many["count"] == len(range(price, paid + 1, price))


@given(st.integers(1, 400), st.integers(1, 30), st.integers(0, 6), st.integers(1, 30))
@settings(max_examples=40, deadline=None)
def test_saving_counted_week_by_week(target: int, each: int, weeks: int, first: int) -> None:
    data = {"find": "save", "amount": target, "each": each} | ({"items": [[weeks, first]]} if weeks else {})
    if weeks * first > target:
        refused(KIND, data, rule="activity-cannot-be")
        return
    saved, week = 0, 0
    while week < weeks or saved < target:
        saved += first if week < weeks else each
        week += 1
    assert answers_of(KIND, data, 4) == [{"weeks": week}]


@pytest.mark.parametrize(
    ("data", "rule"),
    [
        ({"find": "ways"}, "activity-broken"),
        ({"find": "ways", "amount": "20p", "prices": {"bun": 5}}, "activity-broken"),
        ({"find": "ways", "amount": "£100,000"}, "activity-cannot-be"),
        ({"find": "ways", "amount": "£2"}, "activity-too-many-answers"),
        ({"find": "fewest", "amount": "£99,999.99"}, "activity-cannot-be"),
        ({"find": "change", "items": [[1, "£2"]], "paid": ["£1"]}, "activity-cannot-be"),
        (
            {"find": "buy", "amount": "£50", "prices": {"bun": 1, "roll": 2}, "repeats": True},
            "activity-too-many-answers",
        ),
        ({"find": "buy", "paid": ["£1"], "change": "£1", "prices": {"bun": 1}}, "activity-cannot-be"),
        ({"find": "buy", "amount": 10, "fact": "fare", "cast": {}}, "activity-fact-missing"),
        ({"find": "buy", "amount": 10, "fact": "fare", "cast": {"gull": {"fare": "ten"}}}, "activity-cannot-be"),
        ({"find": "missing", "amount": 10, "items": [[1, 11]]}, "activity-cannot-be"),
        ({"find": "missing", "amount": 10, "alike": 3}, "activity-cannot-be"),
        ({"find": "share", "start": 10, "among": 3}, "activity-cannot-be"),
        ({"find": "share", "start": 10, "fraction": 2}, "activity-cannot-be"),
        ({"find": "total", "start": 10, "less": [11]}, "activity-cannot-be"),
        ({"find": "total", "items": [[1000, "£1000"]]}, "activity-cannot-be"),
    ],
)
def test_what_cannot_be_is_refused_in_plain_words(data: dict[str, object], rule: str) -> None:
    refused(KIND, data, rule=rule)


def test_an_amount_no_coins_make_has_no_answer_and_a_reason() -> None:
    solution = solved(KIND, {"find": "ways", "amount": 7, "coins": [2, 4]})
    assert not solution.answers
    assert "cannot be made" in solution.note


@pytest.mark.parametrize("text", ["2.50", "£2.5", "£1.234", "-5p", "5 p p", "p", "£", "1e3", 2.5])
def test_money_is_written_as_money(text: object) -> None:
    message = refused(KIND, {"find": "ways", "amount": text})
    assert "£1.50" in message


GOOD = [
    {"find": "ways", "amount": "20p", "coins": [10, 5, 2]},
    {"find": "ways", "amount": "50p", "purse": [20, 20, 10, 5, 5]},
    {"find": "fewest", "amount": "80p"},
    {"find": "change", "items": [[1, 65]], "paid": [20, 20, 20, 20]},
    {"find": "buy", "paid": ["£1"], "change": 50, "choose": 2, "prices": {"banana": 12, "plum": 23, "pear": 38}},
    {"find": "how_many", "amount": 45, "price": 10},
    {"find": "total", "start": 75, "items": [[3, 5]]},
    {"find": "compare", "purse": [10, 10], "other": [5, 5, 5]},
    {"find": "missing", "amount": 90, "items": [[2, 30]], "alike": 2},
    {"find": "share", "start": 60, "among": 5, "each_less": [2]},
    {"find": "save", "amount": 60, "items": [[2, 10]], "each": 5},
]


@pytest.mark.parametrize("data", GOOD, ids=lambda data: data["find"])
def test_bad_input_never_breaks_it(data: dict[str, object]) -> None:
    for bad in spoilt(data, list(data)):
        never_breaks(KIND, bad)


@pytest.mark.parametrize("data", [yaml.safe_load(KIND.example), *GOOD], ids=lambda data: data["find"])
@pytest.mark.parametrize("year", [1, 2, 3, 4, 5, 6])
def test_year_versions_fit_and_keep_the_order(data: dict[str, object], year: int) -> None:
    version = first_version(KIND, data, year)
    if version is None:
        # Sharing and multiplying many times over are not for Year 1.
        assert year == 1
        assert data["find"] in ("total", "missing", "share", "save")
        return
    fields, context, why, _ = version
    assert why
    before, was = read(KIND, data)
    old, new = list((before.prices or {}).values()), list((fields.prices or {}).values())  # type: ignore[attr-defined]
    old += [p.facts.get("fare") for p in was.characters]
    new += [p.facts.get("fare") for p in context.characters]
    assert [a < b for a in old for b in old] == [a < b for a in new for b in new]


def test_an_authors_own_words_are_dropped_when_the_money_changes() -> None:
    version = first_version(KIND, {"find": "ways", "amount": "20p", "coins": [10, 5], "ask": "Make 20p."}, 3)
    assert version is not None
    assert "20p" not in version[3].task.ask


def test_too_many_characters_are_refused() -> None:
    cast = {f"gull-{i}": {"fare": i + 1} for i in range(13)}
    with pytest.raises(Unsolvable, match="13 characters"):
        KIND.solve(*read(KIND, {"find": "buy", "amount": 5, "fact": "fare", "cast": cast}))
