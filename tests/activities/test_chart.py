"""Charts counted again from their drawings, and their questions answered again with plain sums."""

from __future__ import annotations

import re
from dataclasses import replace
from fractions import Fraction
from itertools import pairwise
from math import atan2, pi
from statistics import mean
from typing import Any

import pytest
from activities.contexts import the_reference
from activities.trials import answers_of, drawn, first_version, fits, never_breaks, read, refused, solved, spoilt
from hypothesis import given, settings
from hypothesis import strategies as st
from storymaths.activities.chart import KIND
from storymaths.activities.fit import misfits
from storymaths.activities.kind import Unsolvable
from storymaths.model.activity import Figure
from storymaths.model.figures.charts import BlockDiagram, TallyChart
from storymaths.model.year import Met

LABELS = "gulls crabs seals puffins whelks limpets otters moths eels crates ropes nets".split()


def rows(most: int = 12) -> st.SearchStrategy[dict[str, int]]:
    return st.dictionaries(st.sampled_from(LABELS), st.integers(0, most), min_size=2)


def test_the_example_is_a_year_2_lesson() -> None:
    solution = solved(KIND, KIND.example)
    assert [answer.says for answer in solution.answers] == [
        "There are 5 crabs.",
        "There are 5 more gulls than seals.",
        "There is 1 fewer crab than puffins.",
        "Most of all: gulls, 8.",
        "There are 22 altogether.",
    ]
    assert fits(solution, 2)


@given(rows(), st.sampled_from(["tally", "pictogram", "block", "bar", "table"]), st.integers(0, 6), st.data())
def test_every_question_is_answered(data: dict[str, int], show: str, year: int, draw: st.DataObject) -> None:
    one, other = draw.draw(st.permutations(list(data)))[:2]
    some = tuple(draw.draw(st.lists(st.sampled_from(list(data)), min_size=1, unique=True)))
    asked: list[dict[str, Any]] = [
        {"ask": "how many", "of": one},
        {"ask": "altogether", "of": some},
        {"ask": "altogether"},
        {"ask": "most"},
        {"ask": "least"},
        {"ask": "mean"},
    ]
    if data[one] != data[other]:
        more, less = (one, other) if data[one] > data[other] else (other, one)
        asked += [{"ask": "more", "of": more, "than": less}, {"ask": "fewer", "of": less, "than": more}]
    answers = answers_of(KIND, {"data": data, "show": show, "questions": asked}, year)
    values = data.values()
    average = mean(Fraction(value) for value in values)
    assert answers[0]["answer"] == data[one]
    assert answers[1]["answer"] == sum(data[label] for label in some)
    assert answers[2]["answer"] == sum(values)
    assert answers[3] == {"ask": "most", "answer": [k for k in data if data[k] == max(values)], "amount": max(values)}
    assert answers[4] == {"ask": "least", "answer": [k for k in data if data[k] == min(values)], "amount": min(values)}
    assert Fraction(parsed(answers[5]["answer"])) == average
    assert [answer["answer"] for answer in answers[6:]] == [abs(data[one] - data[other])] * (len(answers) - 6)


def parsed(shown: Any) -> Fraction:
    """A number as written: ``2``, ``2.5``, ``2 1/3``."""
    return sum((Fraction(part) for part in str(shown).split()), Fraction(0))


@given(
    rows(30),
    st.sampled_from([(1, 1), (2, 1), (4, 2), (5, 5), (10, 5)]),
    st.sampled_from(["tally", "pictogram", "block", "bar"]),
)
def test_a_drawing_shows_the_amounts(data: dict[str, int], size: tuple[int, int], show: str) -> None:
    each, step = size
    values = {label: value * step for label, value in data.items()}
    told: dict[str, Any] = {"data": values, "show": show, "task": "draw"}
    if show == "pictogram":
        told["each"] = each
    limits = {"tally": 60, "block": 20, "pictogram": 12 * each}
    if max(values.values()) > limits.get(show, 10**6):
        refused(KIND, told)
        return
    solution = solved(KIND, told)
    (figure,) = solution.answer_figures
    total = {"tally": 1, "block": 1, "pictogram": Fraction(each)}
    if show != "bar":
        assert marks_drawn(figure) * total[show] == sum(values.values())
        (empty,) = solution.task.figures
        assert marks_drawn(empty) == 0
    for answer, (label, value) in zip(solution.answers, values.items(), strict=True):
        held = dict(answer.data)
        assert held.pop("draw") == label
        worth = {
            "tally": lambda d: 5 * d["fives"] + d["ones"],
            "pictogram": lambda d: each * d["pictures"] + each * d["halves"] / 2,
            "block": lambda d: d["blocks"],
            "bar": lambda d: d["height"],
        }
        assert worth[show](held) == value
        assert held.get("ones", 0) < 5


def marks_drawn(figure: Figure) -> Fraction:
    """Tallies, blocks or pictures counted on the drawing itself; the picture of the key is left out."""
    root = drawn(figure)
    kinds = [(element.tag, element.get("class")) for element in root.iter()]
    if isinstance(figure.data, TallyChart):
        return Fraction(sum(tag == "line" for tag, _ in kinds))
    if isinstance(figure.data, BlockDiagram):
        return Fraction(kinds.count(("rect", "fig-fill")))
    return kinds.count(("circle", "fig-fill")) - 1 + Fraction(kinds.count(("path", "fig-fill")), 2)


@given(st.dictionaries(st.sampled_from(LABELS), st.integers(0, 50), min_size=2, max_size=6), st.integers(0, 40))
@settings(max_examples=100, deadline=None)
def test_what_is_left_open_comes_from_the_total(known: dict[str, int], hidden: int) -> None:
    if "ropes" in known:
        return
    data = {**known, "ropes": "?"}
    first, *_ = answers_of(KIND, {"data": data, "total": sum(known.values()) + hidden, "show": "bar"}, 3)
    assert first == {"ask": "how many", "of": "ropes", "answer": hidden}


def test_a_fact_of_the_cast_can_be_charted() -> None:
    cast = {"gull": {"name": "Gull", "stripes": 3}, "crab": {"name": "Crab", "stripes": 1}}
    fields, context = read(KIND, {"cast": cast, "fact": "stripes", "show": "block"})
    says = [answer.says for answer in KIND.solve(fields, context).answers]
    assert says[0] == "Gull has 3 stripes."
    assert "Gull has 2 more stripes than crab." in [
        text.replace("Crab", "crab").replace("gull", "Gull") for text in says
    ]


BASE: dict[str, Any] = {"data": {"gulls": 4, "crabs": 6}, "show": "pictogram", "each": 2}


@pytest.mark.parametrize(
    ("change", "at"),
    [
        ({"data": {"gulls": 4}}, ("data",)),
        ({"data": {f"row {i}": i for i in range(13)}, "each": None}, ("data",)),
        ({"data": {"gulls": -4, "crabs": 2}}, ("data", "gulls")),
        ({"data": None}, ("data",)),
        ({"data": None, "cast": {"gull": {"mass": 3}}, "fact": "legs"}, ("fact",)),
        ({"data": None, "cast": {"gull": {"mass": True}}, "fact": "mass"}, ("fact",)),
        ({"data": {"gulls": "?", "crabs": "?"}, "total": 4}, ("data", "crabs")),
        ({"data": {"gulls": "?", "crabs": 4}}, ("data", "gulls")),
        ({"data": {"gulls": "?", "crabs": 4}, "total": 2}, ("total",)),
        ({"total": 11}, ("total",)),
        ({"data": {"gulls": 1, "crabs": 6}, "each": 6}, ("each",)),
        ({"data": {"gulls": 3, "crabs": 5}, "each": 5}, ("each",)),
        ({"data": {"gulls": 2.5, "crabs": 5}}, ("show",)),
        ({"data": {"gulls": 100, "crabs": 5}, "each": 1}, ("show",)),
        ({"show": "bar", "each": 1, "data": {"gulls": 9_999_999, "crabs": 5}}, ("show",)),
        ({"show": "tally"}, ("each",)),
        ({"questions": [{"ask": "how many", "of": "gull"}]}, ("questions", 0)),
        ({"questions": [{"ask": "how many"}]}, ("questions", 0)),
        ({"questions": [{"ask": "more", "of": "gulls"}]}, ("questions", 0)),
        ({"questions": [{"ask": "more", "of": "gulls", "than": "crabs"}]}, ("questions", 0)),
        ({"questions": [{"ask": "more", "of": "crabs", "than": "crabs"}]}, ("questions", 0)),
        ({"questions": [{"ask": "most", "of": "crabs"}]}, ("questions", 0)),
    ],
)
def test_what_cannot_be_is_told_where_it_stands(change: dict[str, Any], at: tuple[object, ...]) -> None:
    with pytest.raises(Unsolvable) as caught:
        KIND.solve(*read(KIND, {**BASE, **change}))
    assert caught.value.loc == at
    refused(KIND, {**BASE, **change})


@pytest.mark.parametrize("columns", [[], ["boys"]])
def test_one_amount_is_the_same_in_a_list_or_not(columns: list[str]) -> None:
    """An author may write either, with one column or none; so may a version for another year."""
    for data in ({"gulls": 8, "crabs": [5]}, {"gulls": [8], "crabs": 5}):
        task, context = read(KIND, {"data": data, "show": "table", "columns": columns})
        assert [answer.says for answer in KIND.solve(task, context).answers]
        assert all(KIND.solve(*one[:2]) for one in KIND.versions(task, context, the_reference().years[3]))


def test_bad_values_anywhere() -> None:
    full = {**BASE, "thing": "boats", "total": 10, "task": "read", "questions": [{"ask": "most"}], "fact": "legs"}
    for data in spoilt(full, list(full)):
        never_breaks(KIND, data)
    wide = {f"{'a very long label ' * 2}{i}": i for i in range(12)}
    for show in ("tally", "pictogram", "block", "bar", "table"):
        assert never_breaks(KIND, {"data": wide, "show": show}) is not None
    assert never_breaks(KIND, {"data": {"a": 10_000_000, "b": 1}, "show": "bar"}) is not None
    assert never_breaks(KIND, {"data": {"a": 0, "b": 0}, "show": "bar"}) is not None
    assert never_breaks(KIND, {"data": {"a": "1/3", "b": 0.25}, "show": "bar"}) is not None


@pytest.mark.parametrize("year", range(0, 7))
@pytest.mark.parametrize("show", ["tally", "pictogram", "block", "bar", "table"])
def test_versions_fit_their_year_and_keep_the_order(year: int, show: str) -> None:
    data = {"gulls": 12, "crabs": 6, "seals": 4, "puffins": 6}
    told: dict[str, Any] = {"data": data, "show": show, **({"each": 2} if show == "pictogram" else {})}
    if year == 0:
        # Adding and taking away have no signs yet, and "most" is a word of Year 1: only what is read off is asked.
        told["questions"] = [{"ask": "how many", "of": "seals"}]
    home = 3 if show == "bar" else 2
    found = first_version(KIND, told, year, home)
    assert found is not None
    values = found[0].data
    assert values is not None
    order = [[data[a] < data[b] for b in data] for a in data]
    assert [[values[a] < values[b] for b in data] for a in data] == order


def test_a_country_that_meets_charts_and_signs_in_other_years_needs_no_other_program() -> None:
    """Made up: bar charts and × in Reception, no pictograms and no − at all."""
    fields, context = read(KIND, {"data": {"gulls": 20, "crabs": 15}, "show": "pictogram", "each": 10}, 0)
    met = Met(signs=frozenset("+=×"), charts=frozenset({"bar chart"}))
    there = replace(context, year=context.year.with_what_came_before(met, context.year.practice))
    solution = KIND.solve(fields, there)
    assert solution.answers[0].worked == "2 × 10 = 20."
    assert "Pair them off: gulls has 5 left over." in [answer.worked for answer in solution.answers]
    assert solution.demands.charts == {"pictogram"}
    ones, _ = read(KIND, {"data": {"gulls": 2, "crabs": 1}, "show": "pictogram"}, 0)
    assert KIND.solve(ones, there).task.ask.startswith("Look at the picture chart.")
    assert KIND.solve(ones, there).demands.charts == set()
    bars, _ = read(KIND, {"data": {"gulls": 2, "crabs": 1}, "show": "bar"}, 0)
    assert KIND.solve(bars, there).demands.charts <= there.year.met.charts
    assert not KIND.solve(bars, context).demands.charts <= context.year.met.charts


def test_the_likely_error_is_never_right() -> None:
    asked = [{"ask": "more", "of": "gulls", "than": "crabs"}, {"ask": "fewer", "of": "seals", "than": "gulls"}]
    solution = solved(KIND, {"data": {"gulls": 6, "crabs": 0, "seals": 2}, "show": "block", "questions": asked})
    assert solution.likely_error is not None
    assert solution.likely_error.gives == "2 instead of 4."


def test_what_is_to_be_drawn_must_be_named() -> None:
    refused(KIND, {"data": {"gulls": 4, "crabs": 6}, "task": "draw"}, rule="activity-broken")
    refused(KIND, {"data": {"gulls": 4, "crabs": 6}, "task": "draw", "show": "table"}, rule="activity-broken")


@pytest.mark.parametrize("year", range(1, 7))
def test_versions_of_a_cast_keep_the_order(year: int) -> None:
    cast = {"gull": {"fish": 12}, "crab": {"fish": 4}, "seal": {"fish": 8}}
    found = first_version(KIND, {"cast": cast, "fact": "fish", "show": "pictogram", "each": 4}, year, home=3)
    assert found is not None
    gull, crab, seal = (character.facts["fish"] for character in found[1].characters)
    assert gull > seal > crab > 0


def test_a_label_that_names_several_has_a_verb_of_several() -> None:
    votes = {"dogs": 4, "cats": 1}
    said = [answer.says for answer in solved(KIND, {"data": votes, "thing": "wishes", "show": "bar"}, 3).answers]
    assert "Dogs have the most: 4 wishes." in said
    assert "Cats have the fewest: 1 wish." in said
    owned = {"cast": {"cass": {"foxes": 2}, "tom": {"foxes": 1}}, "fact": "foxes", "show": "bar"}
    said = [answer.says for answer in solved(KIND, owned, 3).answers]
    assert "Cass has the most: 2 foxes." in said
    assert "Tom has 1 fox." in [
        answer.says for answer in solved(KIND, {**owned, "questions": [{"ask": "how many", "of": "tom"}]}, 3).answers
    ]


AMOUNTS = st.lists(st.integers(0, 30), min_size=2, max_size=2)


@given(st.dictionaries(st.sampled_from(LABELS), AMOUNTS, min_size=2, max_size=6), st.sampled_from(["bar", "table"]))
@settings(max_examples=100, deadline=None)
def test_two_columns_are_added_and_compared_column_by_column(data: dict[str, list[int]], show: str) -> None:
    first, *_, last = data
    questions: list[dict[str, Any]] = [
        {"ask": "how many", "of": first, "column": "nets"},
        {"ask": "altogether", "of": first},
        {"ask": "altogether", "column": "boats"},
        {"ask": "most", "column": "nets"},
        {"ask": "range", "column": "boats"},
        {"ask": "altogether"},
    ]
    told = {"data": data, "columns": ["boats", "nets"], "show": show, "questions": questions}
    one, row, column, most, spread, whole = answers_of(KIND, told, 5)
    boats, nets = ([pair[place] for pair in data.values()] for place in (0, 1))
    assert one["answer"] == data[first][1]
    assert row["answer"] == sum(data[first])
    assert column["answer"] == sum(boats)
    assert most["answer"] == [label for label, pair in data.items() if pair[1] == max(nets)]
    assert spread["answer"] == max(boats) - min(boats)
    assert whole["answer"] == sum(boats) + sum(nets)
    assert last in data


@given(st.lists(st.integers(1, 4), min_size=2, max_size=4), st.sampled_from([12, 24, 60, 120]))
@settings(max_examples=100, deadline=None)
def test_slices_are_measured_again_on_the_drawing(parts: list[int], total: int) -> None:
    """Twelfths of the circle, read off as the angle between the ends of each arc."""
    if sum(parts) > 12:
        return
    data = dict(zip(LABELS, [*parts, 12 - sum(parts)], strict=False))
    data = {label: part * total // 12 for label, part in data.items() if part}
    if len(data) < 2:
        return
    solution = solved(
        KIND, {"data": data, "show": "pie", "questions": [{"ask": "how many", "of": one} for one in data]}, 6
    )
    assert [answer.data["answer"] for answer in solution.answers] == list(data.values())
    outline = re.compile(r"M160 130 L(\S+) (\S+) A84 84 0 ([01]) 1 (\S+) (\S+) Z")
    seen = []
    for element in drawn(solution.task.figures[0]).iter():
        if match := outline.fullmatch(element.get("d", "")):
            x1, y1, _, x2, y2 = map(float, match.groups())
            turned = (atan2(y2 - 130, x2 - 160) - atan2(y1 - 130, x1 - 160)) % (2 * pi)
            seen.append(round(turned / (2 * pi) * total))
    assert seen == list(data.values())


@given(st.lists(st.integers(0, 20), min_size=2, max_size=6), st.data())
@settings(max_examples=100, deadline=None)
def test_a_line_graph_is_read_by_walking_along_it(heights: list[int], draw: st.DataObject) -> None:
    data = {str(4 * place): height for place, height in enumerate(heights)}
    at = draw.draw(st.integers(0, 4 * (len(heights) - 1)))
    walked = [Fraction(heights[0])]
    for before, after in pairwise(heights):
        walked += [walked[-1] + Fraction(after - before, 4) * quarter for quarter in (1, 2, 3, 4)]
    told = {"data": data, "show": "line", "axis": "hours", "questions": [{"ask": "at", "of": str(at)}]}
    [read_there] = answers_of(KIND, told, 5)
    assert parsed(read_there["answer"]) == walked[at]
    levels = [place for place, height in enumerate(walked) if height == walked[at]]
    rising = all(after > before for before, after in pairwise(heights))
    if rising:
        assert levels == [at]
        back = {**told, "questions": [{"ask": "where", "of": str(walked[at]), "nearest": 1}]}
        assert answers_of(KIND, back, 5)[0]["answer"] == at


def test_pictures_may_be_cut_into_quarters_and_their_worth_be_found() -> None:
    data = {"gulls": 2250, "crabs": 1000, "seals": 1750}
    drawing = answers_of(KIND, {"data": data, "task": "draw", "show": "pictogram", "each": 1000}, 4)
    worth = [1000 * one["pictures"] + 500 * one["halves"] + 250 * one["quarters"] for one in drawing]
    assert dict(zip((one["draw"] for one in drawing), worth, strict=True)) == data
    question = {"ask": "key", "of": "crabs"}
    solution = solved(KIND, {"data": data, "show": "pictogram", "each": 1000, "questions": [question]}, 4)
    assert solution.answers[0].data["answer"] == 1000
    assert "stands for" not in f"{solution.task.ask} {solution.task.figures[0].alt}"
    assert "stands for" not in "".join(drawn(solution.task.figures[0]).itertext())


@pytest.mark.parametrize(("show", "first"), [("line", 5), ("pie", 6)])
def test_a_chart_is_met_in_its_year_and_not_before(show: str, first: int) -> None:
    data = {"data": {"1": 3, "2": 6, "3": 3}, "show": show, "questions": [{"ask": "how many", "of": "1"}]}
    for year in (first, first - 1):
        limits, reference = the_reference().years[year], the_reference()
        assert bool(misfits(solved(KIND, data, year).demands, limits, reference)) is (year < first)


def test_what_a_chart_cannot_be_asked_is_refused() -> None:
    data = {"gulls": 3, "crabs": 4}
    for show, ask in (("bar", "key"), ("table", "at"), ("line", "at")):
        refused(KIND, {"data": data, "show": show, "questions": [{"ask": ask, "of": "gulls"}]}, 5, "activity-cannot-be")
    refused(KIND, {"data": {"gulls": [3, 4], "crabs": 4}, "show": "bar"}, 5, "activity-cannot-be")
    refused(
        KIND,
        {"data": {"gulls": [3, 4], "crabs": [1, 2]}, "columns": ["a", "b"], "show": "pie"},
        6,
        "activity-cannot-be",
    )
    refused(KIND, {"data": {"gulls": 3, "crabs": 16}, "show": "pie"}, 6, "activity-cannot-be")
    refused(KIND, {"data": {"1": 3, "2": 5, "3": 3}, "show": "line", "questions": [{"ask": "where", "of": "4"}]}, 5)


@given(st.dictionaries(st.sampled_from(LABELS), st.integers(-20, 20), min_size=2, max_size=6))
@settings(max_examples=60, deadline=None)
def test_a_table_may_go_below_nought(data: dict[str, int]) -> None:
    """The gap is counted degree by degree."""
    low, high = min(data, key=lambda label: data[label]), max(data, key=lambda label: data[label])
    if data[low] == data[high]:
        return
    steps = 0
    while data[low] + steps < data[high]:
        steps += 1
    questions = [{"ask": "more", "of": high, "than": low}, {"ask": "range"}]
    solution = solved(KIND, {"data": data, "thing": "°C", "show": "table", "questions": questions}, 5)
    assert [answer.data["answer"] for answer in solution.answers] == [steps, steps]
    refused(KIND, {"data": {**data, low: -1}, "show": "bar"}, 5, "activity-cannot-be")


@given(st.lists(st.integers(0, 20), min_size=2, max_size=6), st.booleans(), st.booleans())
@settings(max_examples=60, deadline=None)
def test_columns_that_stand_up_are_measured_again_by_their_scale(heights: list[int], blocks: bool, two: bool) -> None:
    if not any(heights):
        return
    show, two = "block" if blocks else "bar", two and not blocks
    data = {f"row {n}": [height, height // 2] if two else height for n, height in enumerate(heights)}
    columns = {"columns": ["boats", "nets"]} if two else {}
    solution = solved(KIND, {"show": show, "upright": True, "data": data, **columns, "questions": [{"ask": "most"}]}, 3)
    root = drawn(solution.task.figures[0])
    texts = [
        (one.text or "", float(one.get("x", "0")), float(one.get("y", "0"))) for one in root.iter() if one.tag == "text"
    ]
    numbers = {int(text): y - 5 for text, x, y in texts if text.isdigit() and x < 50}
    nought, most = numbers[0], max(numbers)
    unit = (nought - numbers[most]) / most
    wanted = [one for height in heights for one in ((height, height // 2) if two else (height,))]
    # Boxes that stand on nought or on one another; those of one bar or pile have one left edge. The key lies below.
    piles: dict[float, float] = {}
    for box in (one for one in root.iter() if one.tag == "rect"):
        foot = float(box.get("y", "0")) + float(box.get("height", "0"))
        if foot <= nought + 0.1:
            left = float(box.get("x", "0"))
            piles[left] = piles.get(left, 0) + float(box.get("height", "0")) / unit
    assert [piles[left] for left in sorted(piles)] == pytest.approx([one for one in wanted if one], abs=0.05)
    empty = solved(KIND, {"show": show, "upright": True, "task": "draw", "data": data, **columns}, 3).task.figures[0]
    assert not [one for one in drawn(empty).iter() if one.tag == "rect" and float(one.get("y", "0")) < nought]


def test_only_columns_stand_up_and_what_replaces_them_lies() -> None:
    data = {"show": "block", "upright": True, "data": {"gulls": 3, "crabs": 5}}
    for show in ("tally", "pictogram", "line", "pie", "table"):
        refused(KIND, {**data, "show": show}, 6, "activity-cannot-be")
    version = first_version(KIND, data, 1)
    assert version is not None
    assert version[0].model_dump()["upright"] is False


def test_ranges_are_no_things_and_a_quarter_of_a_picture_is_no_half() -> None:
    data = {"show": "bar", "data": {"0 to 9": 3, "10 to 19": 7}}
    asked = [
        {"ask": "how many", "of": "10 to 19"},
        {"ask": "more", "of": "10 to 19", "than": "0 to 9"},
        {"ask": "most"},
    ]
    solution = solved(KIND, {**data, "questions": [*asked, {"ask": "altogether", "of": ["0 to 9", "10 to 19"]}]}, 4)
    assert [str(line) for line in solution.task.lines] == [
        "How many are there for 10 to 19?",
        "How many more are there for 10 to 19 than for 0 to 9?",
        "Which has the most?",
        "How many are there altogether?",
    ]
    for amount, said in ((9, "2 and a quarter"), (10, "2 and a half"), (3, "three quarters"), (8, "2")):
        slip = solved(KIND, {"show": "pictogram", "each": 4, "data": {"gulls": amount, "crabs": 0}}, 3).likely_error
        assert slip is not None
        assert slip.gives.startswith(f"{said} for gulls")
