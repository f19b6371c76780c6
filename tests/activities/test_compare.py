"""Comparisons held against Fractions worked out by Python's own reading of each side."""

from __future__ import annotations

import contextlib
import re
from fractions import Fraction
from typing import Any

import pytest
import yaml
from activities.contexts import the_reference
from activities.trials import BAD_NUMBERS, drawn, fits, read
from hypothesis import given
from hypothesis import strategies as st
from pydantic import ValidationError
from storymaths.activities.compare import KIND
from storymaths.activities.kind import Unsolvable
from storymaths.activities.work_out import work_out
from storymaths.model.activity import Solution
from storymaths.parse.number_sentence import find_number_sentences, is_true

SIDES = st.recursive(
    st.integers(0, 60).map(str),
    lambda inner: st.tuples(inner, st.sampled_from("+−×÷"), inner).map(lambda t: f"({t[0]} {t[1]} {t[2]})"),
    max_leaves=4,
).map(lambda text: text[1:-1] if text.startswith("(") else text)


def worth(side: str) -> Fraction:
    """A side as Python reads it, every number a Fraction."""
    plain = side.replace("−", "-").replace("×", "*").replace("÷", "/")
    return Fraction(eval(re.sub(r"\d+", r"Fraction(\g<0>)", plain), {"Fraction": Fraction}))


def true(left: str, sign: str, right: str) -> bool:
    a, b = worth(left), worth(right)
    return {"=": a == b, "≠": a != b, "<": a < b, ">": a > b}[sign]


def solve(*statements: str, year: int = 2, **fields: Any) -> Solution:
    solution = KIND.solve(*read(KIND, {"statements": list(statements), **fields}, year))
    for answer in solution.answers:
        for sentence in (*find_number_sentences(answer.worked), *find_number_sentences(answer.says)):
            assert is_true(sentence) is True, answer
        assert set(answer.data) == {"line", "statement", "fill"}
    for figure in (*solution.task.figures, *solution.answer_figures):
        drawn(figure)
    return solution


def fills(*statements: str, **fields: Any) -> list[str]:
    return [str(answer.data["fill"]) for answer in solve(*statements, **fields).answers]


def attempt(*statements: str, **fields: Any) -> tuple[list[str], str]:
    """What fills the gaps, or the words of the refusal."""
    try:
        return fills(*statements, year=6, **fields), ""
    except Unsolvable as problem:
        return [], problem.message
    except ValidationError as problem:
        return [], str(problem)


def refusal(*statements: str, **fields: Any) -> Unsolvable:
    with pytest.raises(Unsolvable) as caught:
        solve(*statements, **fields)
    assert caught.value.message[-1] in ".?"
    return caught.value


def test_the_example_is_a_year_2_lesson() -> None:
    solution = KIND.solve(*read(KIND, KIND.example))
    assert [answer.data["line"] for answer in solution.answers] == [1, 3, 4]
    assert "seal = gull + crab should be 13 > 4 + 6, because 4 + 6 = 10" in solution.note
    assert fits(solution, 2)


@given(SIDES, st.sampled_from("=≠<>"), SIDES)
def test_statements_are_judged_as_fractions_judge_them(left: str, sign: str, right: str) -> None:
    try:
        expected = true(left, sign, right)
        too_much = max(abs(worth(left)), abs(worth(right))) > 10**10
    except ZeroDivisionError:
        assert "divided by 0" in refusal(f"{left} {sign} {right}").message
        return
    if too_much:
        refusal(f"{left} {sign} {right}")
        return
    assert fills(f"{left} {sign} {right}", year=6) == ["true"] * expected
    signs = fills(f"{left} ? {right}", year=6, signs=["=", "≠", "<", ">"])
    assert signs == [s for s in "=≠<>" if true(left, s, right)]


@given(SIDES, SIDES, st.data())
def test_the_number_in_a_gap_is_the_one_and_only(left: str, right: str, data: st.DataObject) -> None:
    numbers = list(re.finditer(r"\d+", right))
    chosen = data.draw(st.sampled_from(numbers))
    hidden = int(chosen.group())

    def filled(x: Fraction | int) -> str:
        return f"{right[: chosen.start()]}({x}){right[chosen.end() :]}"

    try:
        value = worth(right)
        others = {worth(filled(x)) for x in (1, 2, 3, 7) if x != hidden}
    except ZeroDivisionError:
        return
    target = str(value) if value.denominator == 1 and value >= 0 else None
    if target is None or others == {value}:
        return
    gapped = f"{right[: chosen.start()]}___{right[chosen.end() :]}"
    found, why_not = attempt(f"{target} = {gapped}")
    assert found == [f"{hidden:,}"] or "makes no difference" in why_not or "too much" in why_not


@given(st.integers(0, 40), st.integers(1, 9), st.integers(0, 60), st.integers(0, 60))
def test_every_whole_number_between(a: int, b: int, low: int, high: int) -> None:
    expected = [x for x in range(101) if low < a + b * x < high]
    if len(expected) > 60:
        return
    assert fills(f"{low} < {a} + {b} × ___ < {high}") == [str(x) for x in expected]
    assert fills(f"{high} > {a} + {b} × ___ > {low}") == [str(x) for x in expected]


@pytest.mark.parametrize(
    ("statement", "fill"),
    [
        ("6 + 3 = ___ + 4", "5"),
        ("12 = ___ + 5", "7"),
        ("20 - _ = 13", "7"),
        ("24 ÷ ___ = 2.4", "10"),
        ("3.207 × 100 = ___ × 10", "32.07"),
        ("1/___ = 0.25", "4"),
        ("10 = 1/2 of ___", "20"),
        ("3 kg + ___ = 5 kg", "2 kg"),
        ("3 kg + ___ g = 5 kg", "2,000"),
        ("£2 + ___ = £3.50", "£1.50"),
        ("1 m = 40 cm + ___", "60 cm"),
        ("5 − 8 = ___", "−3"),
        ("3 × (2 + ___) = 21", "5"),
        ("___ ÷ 3 = 4 × 2", "24"),
        ("2 = ___ of 3", "2/3"),
    ],
)
def test_gaps_of_many_sorts(statement: str, fill: str) -> None:
    assert fills(statement, year=6) == [fill]


def test_nothing_fits_where_nothing_can() -> None:
    assert fills("3 = 4 = ___") == []
    assert fills("5 > ___ > 8") == []
    assert "Nothing fits in 5 > ___ > 8." in solve("5 > ___ > 8").note


def test_names_stand_for_what_characters_have() -> None:
    cast = {"sea-otter": {"mass": 6, "name": "Old Otter"}, "gull": {"mass": 2}}
    assert fills("sea-otter > gull + gull", cast=cast, fact="mass") == ["true"]
    assert fills("SEA-OTTER = gull × ___", cast=cast, fact="mass") == ["3"]
    problem = refusal("otter > gull", cast=cast, fact="mass")
    assert problem.rule == "activity-fact-missing"
    assert 'Did you mean "sea-otter"?' in refusal("sea-oter > gull", cast=cast, fact="mass").message


@pytest.mark.parametrize(
    ("statement", "does", "gives"),
    [
        (
            "6 + 3 = ___ + 4",
            "Takes = to mean that the answer comes next.",
            "9 in the gap of 6 + 3 = ___ + 4; but 9 + 4 = 13.",
        ),
        (
            "16 + 3 ? 15 + 5",
            "Compares the largest number on each side instead of what the sides come to.",
            "> in 16 + 3 ___ 15 + 5; but 16 + 3 < 15 + 5, because 16 + 3 = 19; 15 + 5 = 20.",
        ),
        (
            "9 = 3 + 6",
            "Calls a statement wrong because the sum stands on the right.",
            "9 = 3 + 6 crossed out; but 9 = 3 + 6, because 3 + 6 = 9.",
        ),
    ],
)
def test_slips_are_worked_out_from_the_numbers(statement: str, does: str, gives: str) -> None:
    likely_error = solve(statement).likely_error
    assert likely_error is not None
    assert (likely_error.does, likely_error.gives) == (does, gives)


@pytest.mark.parametrize(
    ("statement", "says"),
    [
        ("5", "does not compare two sides"),
        ("5 =", "does not compare two sides"),
        ("= 5", "does not compare two sides"),
        ("5 = = 6", "does not compare two sides"),
        ("3 ? ? 4", "does not compare two sides"),
        ("otter = 6", "stands for nobody"),
        ("1e400 = 3", "stands for nobody"),
        ("NaN = 2", "stands for nobody"),
        ("5 = 3 ÷ 0", "divided by 0"),
        ("1/0 = ___", "divided by 0"),
        ("5 kg = 3 m", "not amounts of the same sort"),
        ("5 kg = 3", "not amounts of the same sort"),
        ("5 kg + 3 = 8", "cannot be worked out"),
        ("5 kg + 2 m = ___", "cannot be worked out"),
        ("((((((((3 = 3", "cannot be worked out"),
        ("3 + = 3", "cannot be worked out"),
        ("9" * 200 + " = 1", "too long"),
        ("99999999 = 1", "too large"),
        ("9999999 × 9999999 × 9999999 = 1", "too much"),
        ("___ + ___ = 3", "2 gaps"),
        ("___ ? 3", "2 gaps"),
        ("3_ = 34", "for a digit"),
        ("0 × ___ = 0", "makes no difference"),
        ("5 ÷ ___ < 3", "under a ÷"),
        ("5 kg + ___ m = 7 kg", "No number fits"),
        ("___ > 5", "would do here"),
        ("___ + 3 ≠ 7", "would do here"),
    ],
)
def test_what_cannot_be_is_said(statement: str, says: str) -> None:
    assert says in refusal(statement).message


@given(st.text(alphabet="0123456789 +−×÷=≠<>?_()/.,£kgmp½", max_size=40))
def test_no_text_breaks_it(text: str) -> None:
    found, why_not = attempt(text)
    assert found or why_not or true_or_not(text)


def true_or_not(text: str) -> bool:
    """Whether it could be read at all: a false statement has no answers and no refusal."""
    return bool(re.search("[=≠<>?]", text))


@pytest.mark.parametrize("bad", BAD_NUMBERS, ids=range(len(BAD_NUMBERS)))
def test_bad_values_are_refused_in_plain_words(bad: object) -> None:
    for fields in (
        {"statements": bad},
        {"statements": [bad]},
        {"statements": ["gull = 3"], "cast": {"gull": {"mass": bad}}, "fact": "mass"},
    ):
        with contextlib.suppress(Unsolvable, ValidationError):
            KIND.solve(*read(KIND, fields))


def test_a_whole_cast_of_forty_is_refused() -> None:
    cast = {f"n{index}": {"mass": index + 1} for index in range(40)}
    asked = {"kind": "compare", "title": "A trial", "statements": ["n1 < n2"], "cast": cast, "fact": "mass"}
    [problem] = work_out(yaml.safe_dump(asked), "here", 1, None, 2, the_reference()).problems
    assert "40 characters" in problem.message


@pytest.mark.parametrize("year", range(1, 7))
@pytest.mark.parametrize(
    "asked",
    [
        KIND.example,
        {"statements": ["16 + 3 = 15 + 4", "19 = 3 + 16", "17 + 1 = 19"]},
        {"statements": ["16 + 3 ? 15 + 5", "19 ? 3 + 16"]},
        {"statements": ["6 + 13 = ___ + 4", "12 = ___ + 5"]},
    ],
)
def test_versions_fit_their_year_and_keep_what_is_true(asked: Any, year: int) -> None:
    fields, context = read(KIND, asked)
    before = KIND.solve(fields, context)
    limits = the_reference().years[year]
    for changed, place, _ in KIND.versions(fields, context, limits):
        solution = KIND.solve(changed, place)
        if fits(solution, year):
            break
    else:
        pytest.fail("no version")
    assert [a.data["line"] for a in solution.answers] == [a.data["line"] for a in before.answers]
    if year >= 2:
        told = [[a.data["fill"] for a in s.answers if a.data["fill"] in ("=", "<", ">")] for s in (before, solution)]
        assert told[0] == told[1]


def test_year_1_chooses_between_equal_and_not_equal() -> None:
    fields, context = read(
        KIND,
        {
            "statements": ["6 + 3 ? 5 + 5", "whelk < seal"],
            "fact": "mass",
            "cast": {"whelk": {"mass": 3}, "seal": {"mass": 5}},
        },
    )
    texts = [changed.statements for changed, _, _ in KIND.versions(fields, context, the_reference().years[1])]
    assert ("6 + 3 ? 5 + 5", "whelk ≠ seal") in texts
