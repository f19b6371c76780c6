"""Small parts of print sheets by themselves: runs of words, paper counted, cards chosen, pages of a booklet."""

from __future__ import annotations

import re
from collections.abc import Sequence

import pytest
from hypothesis import given
from hypothesis import strategies as st
from project import reference
from storymaths.model.figures.amounts import PartWhole, Track
from storymaths.model.session import Needed
from storymaths.parse.body import read_body
from storymaths.render.figures.table import draw
from storymaths.render.sheets.booklet import imposed
from storymaths.render.sheets.card_faces import number_card
from storymaths.render.sheets.card_sizes import LARGE, MIDDLE, SMALL, sets_on_a_page
from storymaths.render.sheets.exit_slips import how_answered
from storymaths.render.sheets.letters import printable
from storymaths.render.sheets.paper import PaperUse, counted, in_sets
from storymaths.render.sheets.words import ended, parts_of, plain, runs


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("Two friends.", ["Two friends."]),
        ("9 = 5 + ___", ["9\u00a0=\u00a05\u00a0+\u00a0", {"style": "gap", "text": "___"}]),
        ("A **fair** one", ["A ", {"style": "strong", "text": "fair"}, " one"]),
        ("[6 + 1 = 7 + 3]{wrong} is not", ["6\u00a0+\u00a01\u00a0=\u00a07\u00a0+\u00a03", " is not"]),
        ('He said "no".', ["He said “no”."]),
        ("It's 6 kg", ["It’s 6\u00a0kg"]),
        ("x" * 30, ["x" * 12 + "\u200b" + "x" * 12 + "\u200b" + "x" * 6]),
    ],
)
def test_words_become_runs(text: str, expected: list[object]) -> None:
    assert runs(text) == expected


def test_a_body_becomes_blocks() -> None:
    body = "## Start\n\nRead.\n\n1. One\n2. Two\n    - inside\n\n| A | B |\n| - | - |\n| 1 | 2 |\n\n![What it shows.](a.svg)"
    assert parts_of(read_body(body).blocks) == [
        {"h": ["Start"]},
        {"p": ["Read."]},
        {"list": [["One"], ["Two"], ["inside"]], "numbered": True},
        {"table": {"head": [["A"], ["B"]], "rows": [[["1"], ["2"]]]}},
        {"picture": "a.svg", "alt": "What it shows."},
    ]


def test_a_line_without_marks() -> None:
    assert plain("**Bold** and 6 + 3 = 9") == "Bold and 6 + 3 = 9"


@pytest.mark.parametrize(
    ("needed", "size", "noun", "says"),
    [
        (("cast-card", 6, "pair"), 6, "card", "15 sheets for a class of 30: 15 sets of 6 cards, 6 cards to a pair."),
        (("cast-card", 2, "pair"), 6, "card", "5 sheets for a class of 30: 5 sets of 6 cards, 2 cards to a pair."),
        (
            ("cast-card", 6, "group"),
            6,
            "card",
            "6 sheets for a class of 30: 6 sets of 6 cards, 6 cards to a group of 5.",
        ),
        (("balance-mat", 1, "class"), 1, "mat", "1 sheet for a class of 30: 1 mat, 1 mat for the class."),
        (("number-line", 2, "pair"), 4, "line", "8 sheets for a class of 30: 8 sets of 4 lines, 2 lines to a pair."),
    ],
)
def test_paper_is_counted_from_the_session(needed: tuple[str, int, str], size: int, noun: str, says: str) -> None:
    item, count, per = needed
    use = in_sets(Needed.model_validate({"item": item, "count": count, "per": per}), size, noun, 30, 5)
    assert use.says(1) == says


def test_sets_share_a_page_where_they_fit() -> None:
    assert [sets_on_a_page(size, 6, wanted=15) for size in (SMALL, MIDDLE, LARGE)] == [2, 1, 1]
    assert sets_on_a_page(SMALL, 4, wanted=3) == 3, "no more than are wanted"
    use = PaperUse(children=30, sets=15, thing="set of 6 cards", each="6 cards to a pair", on_a_page=2)
    assert use.says(1) == "8 sheets for a class of 30: 15 sets of 6 cards, 6 cards to a pair, 2 to a sheet."
    assert use.often() == "Print 8 for a class of 30."


def test_versions_stand_in_for_each_other() -> None:
    use = PaperUse(children=30, sets=30, each="1 recording sheet to a child", versions=3)
    assert use.sheets(3) == 30
    assert use.sheets(6) == 60
    assert use.says(6).endswith("each in one of 3 versions, each 2 pages long.")


def test_one_and_many() -> None:
    assert [counted(n, "set of 6 cards") for n in (1, 2)] == ["1 set of 6 cards", "2 sets of 6 cards"]


@given(st.integers(min_value=1, max_value=12))
def test_a_folded_booklet_reads_in_order(sheets: int) -> None:
    leaves = [{"number": n} for n in range(4 * sheets)]
    sides = imposed(leaves)
    assert sorted(leaf["number"] for side in sides for leaf in side) == list(range(4 * sheets))
    for front, back in zip(sides[::2], sides[1::2], strict=True):
        # A sheet turned on its short edge: behind the right page of the front is the left page of the back.
        assert back[0]["number"] == front[1]["number"] + 1
        assert back[1]["number"] == front[0]["number"] - 1
    middle = sides[-1]
    assert middle[1]["number"] == middle[0]["number"] + 1, "the middle opens at two pages that follow each other"


@pytest.mark.parametrize(
    ("number", "card"),
    [
        ("7", {"number": "7", "stands": False}),
        ("9", {"number": "9", "stands": True}),
        ("16", {"number": "16", "stands": True}),
        ("63", {"number": "63", "stands": False}),
        ("−4", {"number": "−4", "stands": False}),
        ("1200", {"number": "1,200", "stands": False}),
        ("2.5", {"number": "2.5", "stands": False}),
        ("3/4", {"number": "", "over": "3", "under": "4", "stands": False}),
        ("3/2", {"number": "1", "over": "1", "under": "2", "stands": False}),
        ("7/7", {"number": "1", "stands": False}),
        ("1 3/8", {"number": "1", "over": "3", "under": "8", "stands": False}),
    ],
)
def test_a_number_on_a_card(number: str, card: dict[str, object]) -> None:
    assert number_card(number) == card


@given(st.text(max_size=40))
def test_any_text_can_be_printed(text: str) -> None:
    assert "\N{PILE OF POO}" not in printable(text + "\N{PILE OF POO}")
    assert printable(printable(text)) == printable(text)


def test_signs_that_no_face_has() -> None:
    assert printable("6 ≠ 7 − 2 × ½ ÷ £3") == "6 ≠ 7 − 2 × ½ ÷ £3"
    assert printable("A → B, ⅓, 猫, e\u0301") == "A to B, 1/3, ?, é"


@pytest.mark.parametrize(
    ("ask", "draws", "writes"),
    [
        ("Draw a square.", True, False),
        ("Show me six in another way.", False, False),
        ("Here are eight eggs. Show me how each can have the same.", False, False),
        ("Turn to face the door. Write how far you turned.", False, True),
        ("Which way does it turn?", False, True),
        ("Say it to me: start at ninety-eight, and go on.", False, False),
        ("Be the balance: hold out your arms. Which is heavier?", False, False),
    ],
)
def test_a_slip_has_lines_only_for_what_is_written(ask: str, draws: bool, writes: bool) -> None:
    assert how_answered(ask, reference().prose.answering) == (draws, writes)


@pytest.mark.parametrize(("text", "whole"), [("Which sign?", "Which sign?"), ("Level", "Level."), ("“Why?”", "“Why?”")])
def test_no_stop_follows_a_stop(text: str, whole: str) -> None:
    assert ended(text) == ended(whole) == whole


@pytest.mark.parametrize(
    ("cells", "rows"),
    [
        (range(56, 64), [8]),
        (range(91, 101), [5, 5]),
        (range(55, 65), [6, 4]),
        (range(0, 90, 10), [5, 4]),
        ((1998, 1999, 2000, 2001, 2002, 2003), [6]),
    ],
)
def test_rows_of_numbers_are_even_and_none_ends_just_before_a_ten(cells: Sequence[int], rows: list[int]) -> None:
    drawn = draw(Track(tuple(map(str, cells))))
    tops = re.findall(r'<rect[^>]* y="([^"]+)"', drawn)
    assert [tops.count(top) for top in dict.fromkeys(tops)] == rows


@pytest.mark.parametrize(
    ("figure", "rows"),
    [
        (Track(("square", "triangle", "circle", "rectangle") * 2, 4), [4, 4]),
        (Track(("red", "blue") * 5, 2), [6, 4]),
        (Track(("Rumi", "Tavi", "Rumi", "", "Rumi", "", "")), [7]),
    ],
)
def test_names_that_come_round_stand_a_round_to_a_line_and_a_week_in_one(figure: Track, rows: list[int]) -> None:
    tops = re.findall(r'<rect[^>]* y="([^"]+)"', draw(figure))
    assert [tops.count(top) for top in dict.fromkeys(tops)] == rows


def test_amounts_to_ten_are_dots_for_those_who_do_not_write_yet() -> None:
    drawn = draw(PartWhole("7", ("5", "?"), in_dots=True))
    assert drawn.count("<circle") == 7 + 5
    assert ">7<" not in drawn
    assert ">12<" in draw(PartWhole("12", ("9", "?"), in_dots=True))
