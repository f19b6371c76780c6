"""Number sentences held against trying every number in Python's own arithmetic."""

from __future__ import annotations

import re
from collections.abc import Sequence
from fractions import Fraction
from itertools import permutations, product
from types import CodeType

import pytest
from activities.contexts import the_reference
from activities.trials import BAD_NUMBERS, answers_of, first_version, fits, never_breaks, read, refused, solved
from hypothesis import given, settings
from hypothesis import strategies as st
from storymaths.activities.fit import misfits
from storymaths.activities.number_sentence import KIND

PYTHON = {"×": "*", "÷": "/", "−": "-", "=": "==", "≠": "!="}
NUMBERS = st.integers(0, 12)
SIDES = st.sampled_from(
    [
        "{}",
        "{} + {}",
        "{} − {}",
        "{} × {}",
        "{} ÷ {}",
        "{} + {} + {}",
        "{} − {} × {}",
        "({} + {}) × {}",
        "{} − ({} − {})",
    ]
)


def in_python(sentence: str) -> CodeType:
    """The sentence for Python's own arithmetic, in fractions; its gaps are ``g0``, ``g1`` …"""
    text = re.sub(r"\d+", lambda number: f"F({number.group()})", sentence)
    for gap in range(text.count("___")):
        text = text.replace("___", f"g{gap}", 1)
    return compile("".join(PYTHON.get(char, char) for char in text), "sentence", "eval")


def holds(code: CodeType, gaps: Sequence[int] = ()) -> bool:
    """Whether Python thinks that it is true."""
    try:
        return bool(eval(code, {"F": Fraction, **{f"g{at}": Fraction(gap) for at, gap in enumerate(gaps)}}))
    except ZeroDivisionError:
        return False


def is_so(sentence: str) -> bool:
    """Whether a sentence without gaps is true."""
    return holds(in_python(sentence))


def by_trying(sentence: str, allowed: Sequence[int]) -> list[list[int]]:
    """Every filling of the gaps, found by trying all."""
    code = in_python(sentence)
    return [list(chosen) for chosen in product(allowed, repeat=sentence.count("___")) if holds(code, chosen)]


@st.composite
def sentences(draw: st.DrawFn, relations: str = "=≠<>") -> str:
    """A sentence with one, two or three gaps in any of its places."""
    text = f"{draw(SIDES)} {draw(st.sampled_from(relations))} {draw(SIDES)}"
    places = text.count("{}")
    gaps = draw(st.sets(st.integers(0, places - 1), min_size=1, max_size=min(3, places)))
    return text.format(*("___" if place in gaps else draw(NUMBERS) for place in range(places)))


def test_the_example_is_a_year_2_lesson() -> None:
    solution = solved(KIND, KIND.example)
    assert [answer.data["who"] for answer in solution.answers] == [["gull", "seal"], ["crab", "puffin"]]
    assert fits(solution, 2)


@given(sentences(), st.integers(0, 3), st.integers(3, 7))
def test_every_filling_in_a_range_is_found_and_no_other(sentence: str, low: int, high: int) -> None:
    expected = by_trying(sentence, range(low, high + 1))
    if len(expected) > 500:
        refused(KIND, {"sentences": sentence, "gaps": f"{low}-{high}"}, rule="activity-too-many-answers")
        return
    found = answers_of(KIND, {"sentences": sentence, "gaps": f"{low}-{high}"}, 6)
    assert [answer["gaps"] for answer in found] == expected


@given(sentences("="))
@settings(max_examples=200, deadline=None)
def test_a_single_gap_needs_no_range_and_may_be_any_number(sentence: str) -> None:
    if sentence.count("___") > 1:
        sentence = sentence.replace("___", "7", sentence.count("___") - 1)
    solution = never_breaks(KIND, {"sentences": sentence}, 6)
    tried = by_trying(sentence, range(0, 60))
    if solution is None:
        assert len(tried) > 40  # any number would do
    elif tried:
        assert [answer.data["gaps"] for answer in solution.answers] == tried
    for answer in solution.answers if solution else ():
        assert answer.data["sentence"].replace(" ", "").count("=") == 1


@given(st.sampled_from(["{}{} + {} = {}{}", "{}{} − {}{} = {}", "{} × {} = {}{}"]), st.data())
@settings(max_examples=60, deadline=None)
def test_missing_digits_are_those_found_by_trying_all(pattern: str, data: st.DataObject) -> None:
    places = pattern.count("{}")
    gaps = data.draw(st.sets(st.integers(0, places - 1), min_size=1, max_size=3))
    asked = pattern.format(*("?" if place in gaps else data.draw(st.integers(1, 9)) for place in range(places)))
    if any(word in ("?", "??") for word in asked.split()):
        return  # a whole number is missing, not a digit
    expected = []
    for chosen in product("0123456789", repeat=len(gaps)):
        filled = asked.replace("?", "{}").format(*chosen)
        if all(word == str(int(word)) for word in filled.split() if word.isdecimal()) and is_so(filled):
            expected.append([int(digit) for digit in chosen])
    solution = KIND.solve(*read(KIND, {"sentences": asked}, 3))
    assert [answer.data["gaps"] for answer in solution.answers] == expected


@given(st.integers(1, 30), NUMBERS, NUMBERS, st.booleans())
@settings(max_examples=60, deadline=None)
def test_missing_signs_are_those_that_make_it_true(a: int, b: int, c: int, relation: bool) -> None:
    sentence = f"{a} + {b} ___ {c}" if relation else f"{a} ___ {b} = {c}"
    signs = "<=>" if relation else "+−×÷"
    expected = [sign for sign in signs if is_so(sentence.replace("___", sign))]
    assert {answer["gaps"][0] for answer in answers_of(KIND, {"sentences": sentence})} == set(expected)


@given(st.dictionaries(st.sampled_from("gull crab seal puffin whelk limpet".split()), st.integers(1, 9), min_size=2))
@settings(max_examples=60, deadline=None)
def test_the_cast_stands_in_the_gaps_in_every_way(masses: dict[str, int]) -> None:
    cast = {name: {"mass": mass} for name, mass in masses.items()}
    data = {"sentences": "___ + ___ = 10", "fact": "mass", "gaps": "cast", "cast": cast}
    expected = {who for who in permutations(masses, 2) if sum(masses[name] for name in who) == 10}
    found = [tuple(answer["who"]) for answer in answers_of(KIND, data)]
    assert set(found) == expected
    assert len(found) == len(expected)
    pairs = [frozenset(answer["who"]) for answer in answers_of(KIND, {**data, "swapped": "same"})]
    assert len(pairs) == len(set(pairs)) == len(expected) // 2


@given(st.integers(1, 40), st.integers(1, 40), st.sampled_from("+×"))
@settings(max_examples=60, deadline=None)
def test_a_family_is_every_true_sentence_of_its_three_numbers(a: int, b: int, sign: str) -> None:
    whole = a + b if sign == "+" else a * b
    undo = {"+": "−", "×": "÷"}[sign]
    expected = set()
    for x, y, z in permutations([a, b, whole]):
        for one in (sign, undo):
            expected |= {s for s in (f"{x} {one} {y} = {z}", f"{z} = {x} {one} {y}") if is_so(s)}
    [answer] = answers_of(KIND, {"family": [whole, a, b], "family_of": sign})
    sentences = [text.replace(",", "") for text in answer["sentences"]]
    assert set(sentences) == expected
    assert len(sentences) == len(expected)


def test_a_number_missing_from_a_family_can_be_a_part_or_the_whole() -> None:
    assert [a["family"] for a in answers_of(KIND, {"family": [3, "___", 7]})] == [[3, 4, 7], [3, 7, 10]]
    assert [a["family"] for a in answers_of(KIND, {"family": [5, 12, "___"], "family_of": "×"})] == [[5, 12, 60]]
    assert "3 + 4 ≠ 8" in refused(KIND, {"family": [3, 4, 8]}, rule="activity-cannot-be")


def test_sentences_without_gaps_are_judged() -> None:
    solution = solved(KIND, {"sentences": ["9 = 4 + 5", "4 + 5 = 10", "3 > 7 − 2"]})
    assert [answer.data["true"] for answer in solution.answers] == [True, False, False]
    assert solution.answers[1].says == "It is not true: 4 + 5 ≠ 10"


def test_cards_are_used_once_and_measures_keep_their_units() -> None:
    data = {"sentences": "7 + ? + ? = 20", "gaps": "1-9", "each_once": True, "swapped": "same"}
    assert [answer["gaps"] for answer in answers_of(KIND, data)] == [[4, 9], [5, 8], [6, 7]]
    assert answers_of(KIND, {"sentences": "200 g + ___ g = 1 kg"}, 3)[0]["gaps"] == [800]
    assert answers_of(KIND, {"sentences": "£1 − ___p = 35p"}, 3)[0]["gaps"] == [65]
    refused(KIND, {"sentences": "3 kg + ___ m = 4"}, rule="activity-cannot-be")


def test_slips_are_worked_out_from_the_sentence() -> None:
    for sentence, gives in {
        "8 + 4 = ___ + 5": "12 instead of 7.",
        "___ + 15 = 21": "36 instead of 6.",
        "33 − 18 = ___": "25 instead of 15.",
        "36 + 59 = ___": "85 instead of 95.",
        "2 + 1 × 3 = ___": "9 instead of 5.",
    }.items():
        likely_error = solved(KIND, {"sentences": sentence}, 6).likely_error
        assert likely_error
        assert likely_error.gives == gives


BAD_SENTENCES = [
    "", " ", "___", "7 + = 3", "((((", "nan = ___", "1e400 + ___ = 3", "9" * 40 + " + ___ = 3", "x" * 40, "gull + ___ = 4",
    "7 ÷ 0 = ___", "0 ÷ ___ = 0", "___ × 0 = 0", "___ ÷ ___ = 1", "___ + ___ + ___ + ___ + ___ < 50", "−" * 100 + "1 = ___",
    "1/0 + ___ = 2", "3 kg = ___ m", "___ ___ ___ = 5", "7 ___ 3 ___ 4 ___ 5 ___ 6 ___ 7", "5 5 = ___", "___ = ___ = ___",
    "10000000 × 10000000 = ___", "11000000 + ___ = 12000000", "?" * 30 + "1 = 4", "0 × ___ + 0 × ___ = 1", "___ × ___ = 1\n2",
]  # fmt: skip


@pytest.mark.parametrize("sentence", BAD_SENTENCES)
@pytest.mark.parametrize("gaps", [None, "0-20", "0-9999999", "cast"])
def test_bad_sentences_are_refused_in_plain_words(sentence: str, gaps: str | None) -> None:
    data = {"sentences": [sentence] * 3, "fact": "mass", "cast": {"crab": {"mass": 3}}}
    never_breaks(KIND, {**data, **({"gaps": gaps} if gaps else {})})


@pytest.mark.parametrize("bad", BAD_NUMBERS, ids=range(len(BAD_NUMBERS)))
def test_bad_values_are_refused_in_plain_words(bad: object) -> None:
    for data in (
        {"sentences": bad},
        {"sentences": [bad]},
        {"sentences": "___ + 2 = 5", "gaps": bad},
        {"sentences": "___ + 2 = 5", "gaps": [bad]},
        {"sentences": "___ ___ 2 = 5", "signs": [bad], "gaps": "0-9"},
        {"family": bad},
        {"family": [bad, 3, 4]},
        {"family": [bad, 3, "___"], "family_of": "×"},
        {"sentences": "crab + ___ = 12", "fact": "mass", "cast": {"crab": {"mass": bad}}},
        {"sentences": "___ + ___ = 12", "gaps": "cast", "fact": "mass", "cast": {"crab": {"mass": bad}}},
    ):
        never_breaks(KIND, data)
    refused(KIND, {})
    refused(KIND, {"sentences": "___ + ___ = 12", "gaps": "cast"}, rule="activity-fact-missing")
    refused(KIND, {"sentences": "___ + ___ = 12", "gaps": "cast", "fact": "mass"}, rule="activity-fact-missing")


@pytest.mark.parametrize(
    ("sentence", "home", "years"),
    [
        ("___ + 15 = 21", 2, (1, 2, 3, 4, 5, 6)),
        ("80 − ___ = 50", 2, (1, 3)),
        ("36 + 59 = ___", 2, (1, 3, 4)),
        ("8 + 4 = ___ + 5", 1, (2, 3)),
        ("5 × ___ = 35", 2, (3, 4)),
        ("90 − 56 ÷ 8 = ___", 4, (3,)),
        ("gull + ___ = seal", 2, (1, 3)),
    ],
)
def test_versions_fit_their_year_and_keep_the_order(sentence: str, home: int, years: tuple[int, ...]) -> None:
    cast = {"gull": {"mass": 14}, "seal": {"mass": 29}}
    data = {"sentences": sentence, "fact": "mass", "cast": cast} if "gull" in sentence else {"sentences": sentence}
    before = answers_of(KIND, data, home)[0]["sentence"]
    for year in years:
        found = first_version(KIND, data, year, home)
        assert found, (sentence, year)
        after = found[3].answers[0].data["sentence"]
        assert _ranks(before) == _ranks(after), (before, after)


def _ranks(sentence: str) -> list[int]:
    numbers = [int(word.replace(",", "").strip("()")) for word in sentence.split() if word.strip("()")[0].isdigit()]
    return [sorted(set(numbers)).index(number) for number in numbers]


def test_versions_are_the_same_every_time() -> None:
    fields, context = read(KIND, {"sentences": ["___ + 15 = 21", "80 − ___ = 50", "33 − 18 = ___ + 4"] * 4})
    limits = the_reference().years[3]
    first = [changed.sentences for changed, _, _ in KIND.versions(fields, context, limits)]
    assert first == [changed.sentences for changed, _, _ in KIND.versions(fields, context, limits)]


def test_a_year_before_division_is_told_forwards() -> None:
    """How a gap is reasoned out keeps to the signs a year has met (DFE-00180-2013: ÷ with × in Year 2)."""
    told = [solved(KIND, {"sentences": "5 × ___ = 35"}, year) for year in (1, 2)]
    assert [one.answers[0].worked for one in told] == ["5 × 7 = 35.", "35 ÷ 5 = 7."]
    assert ["÷" in one.demands.signs for one in told] == [False, True]


def test_amounts_are_reckoned_in_their_smallest_unit() -> None:
    """100p − 65p = 35p, and not parts of a pound: £1 is 100p (Decimal Currency Act 1967, from memory)."""
    demands = solved(KIND, {"sentences": "£1 − ___p = 35p"}, 2).demands
    assert demands.calculated == (35, 65, 100)


def _reasons(sentences: list[str], year: int) -> list[str]:
    demands = solved(KIND, {"sentences": sentences}, year).demands
    return misfits(demands, the_reference().years[year], the_reference())


@pytest.mark.parametrize(
    ("sentences", "first"),
    [
        # Published questions of these years: the national curriculum (DfE, 2013), Year 3; key stage 1 tests of 2024 to 2026.
        (["4 × 12 × 5 = ___"], 3),
        (["80 + 30 = 100", "60 + 40 = 100"], 2),
        (["3 − 20 = 17", "20 − 3 = 17"], 1),
        # "add and subtract fractions with the same denominator within one whole": Year 3, the national curriculum.
        (["2/5 + 4/5 = ___"], 4),
        (["2/5 + 3/5 = ___"], 3),
        # "up to two decimal places" in Year 4, three in Year 5.
        (["1 ÷ 8 = ___"], 5),
        (["1 ÷ 4 = ___"], 4),
    ],
)
def test_a_question_fits_its_year_and_not_the_year_before(sentences: list[str], first: int) -> None:
    assert _reasons(sentences, first) == []
    assert _reasons(sentences, first - 1)


def test_what_is_too_large_for_the_year_is_seen_to_be_wrong_without_working_it_out() -> None:
    [answer] = solved(KIND, {"sentences": ["80 + 30 = 100"]}, 2).answers
    assert answer.data["true"] is False
    assert answer.worked == "80 + 30 is more than 100."
    assert "110" in solved(KIND, {"sentences": ["80 + 30 = 100"]}, 3).answers[0].worked


def test_signs_come_in_the_order_they_are_taught() -> None:
    found = [answer["gaps"] for answer in answers_of(KIND, {"sentences": ["4 _ 1 _ 4"]}, 3)]
    order = ["+", "−", "×", "÷", "=", "≠", "<", ">"]
    assert found == sorted(found, key=lambda gaps: [order.index(sign) for sign in gaps])


def test_a_family_of_factors_speaks_of_no_parts() -> None:
    solution = solved(KIND, {"family": [3, 4, 12], "family_of": "×"}, 3)
    assert "part" not in f"{solution.note} {solution.answers[0].worked}"
    assert "part" not in solution.demands.words
