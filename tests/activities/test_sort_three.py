"""Sortings by three rules, made again with plain comparisons; and every name of the drawing inside the rings it belongs in."""

from __future__ import annotations

import re
from itertools import product
from typing import Any

from activities.contexts import the_reference
from activities.test_sort import CASTS, RULES, Facts
from activities.trials import answers_of, drawn, first_version, never_breaks, read, refused, solved, spoilt
from hypothesis import given, settings
from hypothesis import strategies as st
from storymaths.activities.fit import too_early
from storymaths.activities.sort import KIND

NUMBERS = {"numbers": "1 to 30", "by": ["even(n)", "multiple(n, 5)", "n > 20"]}
PLACES = ("first", "second", "third")


def place_of(fits: tuple[bool, ...]) -> str:
    """The name of a place, put together from the rules that are fitted."""
    return {3: "all", 0: "none"}.get(sum(fits)) or " and ".join(
        name for name, one in zip(PLACES, fits, strict=True) if one
    )


@given(CASTS, st.lists(st.sampled_from(sorted(RULES)), min_size=3, max_size=3, unique=True))
@settings(max_examples=80, deadline=None)
def test_everyone_goes_where_the_three_rules_put_them(cast: dict[str, Facts], by: list[str]) -> None:
    [answer] = answers_of(KIND, {"cast": cast, "by": by}, 4)
    regions: dict[str, list[str]] = {place_of(fits): [] for fits in product((True, False), repeat=3)}
    for name, facts in cast.items():
        regions[place_of(tuple(RULES[rule](facts) for rule in by))].append(name)
    assert answer["regions"] == regions
    assert sorted(answer["empty"]) == sorted(region for region, names in regions.items() if not names)


def test_every_number_is_drawn_in_its_rings_and_in_no_other() -> None:
    solution = solved(KIND, NUMBERS, 3)
    root = drawn(solution.answer_figures[0])
    rings: list[tuple[float, ...]] = []
    for one in root.iter():
        if one.tag == "path" and one.get("class") == "fig-line":
            x, y, across, up = map(float, re.findall(r"[-\d.]+", one.get("d", ""))[:4])
            rings.append((x + across, y, across, up))
    assert len(rings) == 3
    seen = set[int]()
    for text in (one for one in root.iter() if one.tag == "text"):
        for number in map(int, re.findall(r"\d+", text.text or "")) if "mark" not in text.get("class", "") else ():
            at = float(text.get("x", "0")), float(text.get("y", "0")) - 5
            inside = tuple(((at[0] - x) / wide) ** 2 + ((at[1] - y) / tall) ** 2 < 1 for x, y, wide, tall in rings)
            assert inside == (number % 2 == 0, number % 5 == 0, number > 20), number
            seen.add(number)
    assert seen == set(range(1, 31))
    assert "30" not in "".join(drawn(solution.task.figures[0]).itertext())


def test_it_is_first_set_in_its_year_and_younger_years_have_two_rings() -> None:
    reference = the_reference()
    fields, _ = read(KIND, NUMBERS, 3)
    first = reference.tasks.first_year("sort", "three")
    assert [bool(too_early(fields, reference.years[year], reference)) for year in (first - 1, first)] == [True, False]
    version = next(KIND.versions(*read(KIND, NUMBERS, 3), reference.years[1]))
    assert version[0].task_name == "three"
    later: list[Any] = [one for one, _, _ in KIND.versions(*read(KIND, NUMBERS, 3), reference.years[1])]
    assert {one.task_name for one in later} == {"three", "place"}
    assert first_version(KIND, NUMBERS, 2, 3) is not None


def test_what_cannot_be_is_refused_in_plain_words() -> None:
    for bad in ({"diagram": "carroll"}, {"diagram": "hoop"}, {"by": ["even(n)", "even(n)", "n > 2"]}):
        refused(KIND, {**NUMBERS, **bad}, 3, "activity-cannot-be")
    for bad in spoilt({**NUMBERS, "diagram": "venn"}, ["by", "numbers", "diagram"]):
        never_breaks(KIND, bad, 3)
