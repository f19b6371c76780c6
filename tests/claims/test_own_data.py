"""A question and the data of its activity: all but one number alike, and one other. The data are made up."""

from __future__ import annotations

import pytest
from storymaths.claims.own_data import exchanged, nearly_told


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


@pytest.mark.parametrize(
    ("words", "data", "told"),
    [
        ("The steps 1 to 10, with 1, 4, 8 and 10 on them.", {"terms": [1, "___", "___", 4, 7, 10]}, (8, 7)),
        ("Beans that are four, seven and ten cubes tall.", {"things": {"a": "4 cubes", "b": "7 cubes", "c": "9 cubes"}}, (10, 9)),
        ("The friends are 451 g, 300 g and 250 g.", {"facts": {"ram": 450, "hen": 300, "cat": 250}}, (451, 450)),
    ],
)  # fmt: skip
def test_one_number_of_a_list_in_the_words_of_a_bend_is_found(
    words: str, data: dict[str, object], told: tuple[int, int]
) -> None:
    assert nearly_told(words, data) == told


@pytest.mark.parametrize(
    ("words", "data"),
    [
        ("The steps 1 to 10, with 1, 4, 7 and 10 on them.", {"terms": [1, 4, 7, 10]}),
        ("Numbers to 20, such as 4 and 7.", {"terms": [4, 7, 9]}),
        ("Loaves for 2 doors and for 4, of 8 squares.", {"piles": [2, 4]}),
        ("Numbers 4, 7, 12 and 15.", {"terms": [4, 7, 9]}),
        ("Two-digit numbers.", {"terms": [4, 7, 9]}),
        ("Beans of 4 and 7 cubes, beside towers of 8 and 10.", {"things": {"a": "4 cubes", "b": "7 cubes", "c": "9 cubes"}}),
        ("Numbers 4, 7 and 8.", {"answers": [4, 7, 9]}),
    ],
)  # fmt: skip
def test_what_a_bend_tells_whole_or_in_part_is_left(words: str, data: dict[str, object]) -> None:
    assert nearly_told(words, data) is None
