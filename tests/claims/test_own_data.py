"""A question and the data of its activity: all but one number alike, and one other. The data are made up."""

from __future__ import annotations

import pytest
from storymaths.claims.own_data import exchanged


@pytest.mark.parametrize(
    ("ask", "data", "counts", "told"),
    [
        ("There are 20 eggs. The five friends share them.", {"total": 21}, {5}, (20, 21)),
        ("There are 10 hens, and 5 are at home. How many are out?", {"whole": 10, "known": [4]}, set(), (5, 4)),
        ("A jug takes 4 cups and a bowl takes 8.", {"things": {"jug": "4 cups", "bowl": "7 cups"}}, {2}, (8, 7)),
        ("Ten socks live in the lift. Six are in.", {"whole": 10, "known": [7]}, set(), (6, 7)),
        (
            "Here are five heaps for two families: 6, 7, 8, 9 and 11.",
            {"piles": [6, 7, 8, 9, 10], "among": 2},
            {5},
            (11, 10),
        ),
        ("A bun costs 15 pence. You have three 5 pence coins.", {"amount": 16, "purse": [5, 5, 5]}, {3}, (15, 16)),
    ],
)
def test_one_number_for_another_is_found(
    ask: str, data: dict[str, object], counts: set[int], told: tuple[int, int]
) -> None:
    assert exchanged(ask, data, counts) == told


@pytest.mark.parametrize(
    ("ask", "data", "counts"),
    [
        ("There are 20 eggs. The five friends share them.", {"total": 20}, {5}),
        ("Six long moos are worth 60. What are the short ones worth?", {"whole": 64, "known": [60]}, {1}),
        ("Three roars are worth 300 and six moos are worth 60.", {"whole": 364, "known": [300, 60]}, set()),
        ("Start at B2. Forward 2. Do that four times.", {"grid": "5 by 5", "route": ["forward 2"] * 4}, {8}),
        ("Toast costs 80p and soup costs £1. You pay with £2.", {"prices": {"toast": 80, "soup": 100}, "paid": 2}, set()),
        ("The perimeter is 22 metres. The sides come to 11.", {"whole": 11, "smallest": 1}, set()),
        ("Which two make 64? Find every pair.", {"sentences": ["___ + ___ = 64"], "gaps": [18, 25]}, set()),
        ("Put the four poles in order.", {"things": {"a": "23 cm", "b": "31 cm"}}, {4}),
        ("On page 6 Samira has painted 3 of the 10 posts.", {"whole": 10, "known": [3]}, set()),
        ("What number is missing?", {"terms": [2, 4, 6]}, set()),
        ("Each is 2 more than the last. Which are missing?", {"terms": [12, 14, 18]}, set()),
        ("Soup is £1.35.", {"prices": {"soup": 135}}, set()),
        ("A strip of 24 squares is folded in halves, then in thirds.", {"things": {"half": "12 squares"}}, set()),
        ("Walk for 2 hours.", {"spans": ["120 minutes"]}, set()),
        ("One of 5 is wrong.", {"terms": [4, 5, 6, 8, 8, 9]}, {6}),
    ],
)  # fmt: skip
def test_what_agrees_or_is_worked_out_is_left(ask: str, data: dict[str, object], counts: set[int]) -> None:
    assert exchanged(ask, data, counts) is None
