"""Food, small parts and other dangers named only in a page's words: what calls for a note, and what is only spoken of.

What is a small part is settled by 16 CFR 1501.4, what an allergen by Annex II to Regulation (EU) No 1169/2011.
"""

from __future__ import annotations

import pytest
from project import problems_with, text_of
from storymaths.model.problem import Problem

S2, H1 = "books/cliff-house-lift/session-2.md", "books/cliff-house-lift/home-1.md"


def rules_called(words: str, path: str = S2) -> set[str]:
    return {problem.rule for problem in problems_of(words, path)}


def problems_of(words: str, path: str, after: str = "Ask for all six.", year: str = "") -> list[Problem]:
    text = text_of(path).replace(after, f"{after} {words}", 1)
    assert words in text
    # The frozen session has a note on small parts for its cubes; both go, so that words alone must call for it.
    text = text.replace("  - {item: interlocking-cube, count: 18, per: pair}\n", "").replace(
        "risk: small-parts", "risk: bodies"
    )
    if year:
        text = text.replace("bends:\n  1:\n", f"bends:\n  {year}:\n")
    return problems_with({path: text})


@pytest.mark.parametrize(
    ("words", "rules"),
    [
        ("Give each group twelve peanuts to share.", {"allergen-unnoted", "small-parts-unnoted", "caution-missing"}),
        ("Give each pair ten buttons.", {"small-parts-unnoted"}),
        ("Hand out a bag of marbles.", {"small-parts-unnoted"}),
        ("Put some dried peas in each cup.", {"allergen-unnoted", "small-parts-unnoted", "caution-missing"}),
        ("Children thread twenty beads.", {"small-parts-unnoted"}),
        ("Each pair takes ten sequins.", {"small-parts-unnoted"}),
        ("Share out six sandwiches.", {"allergen-unnoted", "caution-missing"}),
        ("Count twelve biscuits and share them.", {"allergen-unnoted", "caution-missing"}),
        ("Hand out six apples.", {"allergen-unnoted", "caution-missing"}),
        ("Then count out eight cherries.", {"allergen-unnoted", "small-parts-unnoted", "caution-missing"}),
        ("Tie it with a bootlace. Use a bootlace.", {"caution-missing"}),
        ("Run off a copy of page 9.", {"phrase-forbidden"}),
        ("Photocopy pages 6 and 7.", {"phrase-forbidden"}),
        ("Scan page 6.", {"phrase-forbidden"}),
        ("Take a short video of the children.", {"phrase-forbidden", "caution-missing"}),
    ],
)
def test_words_that_call_for_a_note(words: str, rules: set[str]) -> None:
    assert rules_called(words) == rules


@pytest.mark.parametrize(
    "words",
    [
        "Button your coat.", "Count the buttons on page 3.", "Count the biscuits in the picture.", "Share twelve paper biscuits.",
        "Moose eats nine buns in the story.", "Badger had ten biscuits and gave three away.", "Draw ten cherries.",
        "Do not use marbles.", "If you share 12 biscuits, what is left?", "Use the nuts and bolts of it.", "Count Moose’s buttons.",
        "Get out the marble run.", "Put the paper cherries in a row.", "Count the peas you can see.", "Imagine that you share 12 cakes.",
        "Share 12 apples between 3 crates.", "Count six pears.", "They share a sweet smile.", "How many cakes can you share?",
        "The story has twelve peanuts in it.", "Put a copy of the sheet out.",
        "Put out boxes like big dice.", "Count the nuts a plate at a time. There are no nuts in the lesson.",
    ],
)  # fmt: skip
def test_what_is_only_spoken_of_is_left(words: str) -> None:
    assert rules_called(words) == set()


def test_the_youngest_year_of_a_home_page_counts() -> None:
    after = "Read pages 6 and 7 first."
    called = [problems_of("Count twelve grapes.", H1, after, year) for year in ("1", "3")]
    assert [any("choking-food" in problem.message for problem in problems) for problems in called] == [True, False]
