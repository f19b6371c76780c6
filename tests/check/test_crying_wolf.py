"""Rules that read prose: what they must see, and what they must let pass."""

from __future__ import annotations

import pytest
from project import problems_with, text_of

S2 = "books/cliff-house-lift/session-2.md"
H1 = "books/cliff-house-lift/home-1.md"


def rules_broken_by(words: str, path: str = S2, after: str = "Ask for all six.") -> list[str]:
    return [problem.rule for problem in problems_with({path: text_of(path).replace(after, f"{after} {words}", 1)})]


@pytest.mark.parametrize(
    "words",
    [
        "Turn to page 7.", "Read pages 4 to 7.", "It takes 120 minutes.", "Allow 5 to 150 minutes.", "In 2027 we did it again.",
        "Since 1998 the loft has stood.", "Get out 300 interlocking cubes.", "Put 120 small counters in the tray.", "A class of 130.",
        "It is for 150 children.", "Step 3 is next.", "See 2AS-3.", "At 10:30 we stop.", "Make 250 copies.", "1. First",
        "100 is the most there can be.", "There are 99 left.", "[4 + 5 = 8]{wrong} is a mistake.", "4 + ___ = 9",
        "Half of 12 is 6.", "So ½ = ½.", "1/2 of 6 = 3", "3/4 of the loft", "It weighs 5 kg.", "It costs £5 or 50p.", "10 − 4 = 6",
        "No scissors are needed.", "Work without water today.", "Nothing is cut, so there is no rope.",
        "They record the number sentence.", "The light goes out and the heavy stick falls.", "Which one is heavier?",
        "Two fingers climb the other arm.", "Show page 8, with the kettle on the stove.", "Read page 8, where the oven glows.",
        "Go to the Oven Door and knock.", "The oven house has three doors. The oven is only in the story.",
    ],
)  # fmt: skip
def test_these_are_let_pass(words: str) -> None:
    assert rules_broken_by(words) == []


@pytest.mark.parametrize(
    ("words", "rule"),
    [
        ("There were 1,250 boats.", "number-beyond-year"),
        ("Count to 101.", "number-beyond-year"),
        ("Write 2.5 on the slate.", "number-beyond-year"),
        ("It is −3 today.", "number-beyond-year"),
        ("Colour 2/5 of it.", "fraction-beyond-year"),
        ("Find ⅛ of it.", "fraction-beyond-year"),
        ("It is 6 mm thick.", "unit-beyond-year"),
        ("So 20% of them.", "unit-beyond-year"),
        ("It is 6² of them.", "symbol-beyond-year"),
        ("So 6 × 2 = 12.", "symbol-not-introduced"),
        ("So 6 + 2 = 9.", "number-sentence-untrue"),
        ("Fetch the scissors.", "caution-missing"),
        ("Fill the bucket with water.", "caution-missing"),
        ("Take a photo of the mat.", "caution-missing"),
        ("Light a candle.", "caution-missing"),
        ("Read page 8 and light a candle.", "caution-missing"),
        ("Read page 8, then fill the kettle.", "caution-missing"),
        ("Use the oven. The rope is only in the story.", "caution-missing"),
    ],
)
def test_these_are_seen(words: str, rule: str) -> None:
    assert rules_broken_by(words) == [rule]


def test_what_a_trimmer_cuts_calls_for_care_with_blades_and_not_for_scissors() -> None:
    text = text_of(S2).rstrip() + "\n\nWith a trimmer, cut the strips of paper.\n"
    assert ["blades-and-points" in problem.message for problem in problems_with({S2: text})] == [True]


def test_a_step_may_be_called_after_a_thing_of_the_story() -> None:
    text = text_of(S2)
    step = "One against two"
    assert text.count(step) > 1
    for name, told in (("The long rope", []), ("Cut the rope", ["caution-missing"])):
        assert [problem.rule for problem in problems_with({S2: text.replace(step, name)})][:1] == told


def test_a_childs_wrong_idea_may_be_a_number_too_large() -> None:
    says, shows = "says: You can't start with 9.", "shows: The child takes = to mean"
    text = text_of(S2)
    assert problems_with({S2: text.replace(says, "says: It is 2003.")}) == []
    assert problems_with({S2: text.replace(shows, "shows: It is 2003, takes = to mean")}) != []


def test_a_bend_has_the_reach_of_its_own_year() -> None:
    one, three = "Use Moose, Badger, Puffin,", "One brick is 50 g."
    assert rules_broken_by("Count 30 bricks.", after=one.rstrip(",")) == []
    assert rules_broken_by("So 12 + 12 = 24.", after="The rides are 6 = 5 + 1, 5 = 4 + 1 and 4 = 3 + 1.") == [
        "number-beyond-year"
    ]
    assert rules_broken_by("The loft is 900 bricks high.", after=three) == []
    assert rules_broken_by("The loft is 1,900 bricks high.", after=three) == ["number-beyond-year"]


def test_food_at_home_needs_its_note_and_choking_food_another_for_the_young() -> None:
    text = text_of(H1).replace("  - {item: pencil, count: 1}\n", "  - {item: grapes, count: 9}\n")
    rules = {problem.rule for problem in problems_with({H1: text})}
    assert "allergen-unnoted" in rules
    young = text.replace("year: 2\n", "year: 1\n").replace("also: [1]\n", "")
    assert "caution-missing" in {problem.rule for problem in problems_with({H1: young})}
