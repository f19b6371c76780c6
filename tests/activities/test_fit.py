"""Whether a solution is within the reach of a year, and the reasons given when it is not."""

from __future__ import annotations

from fractions import Fraction

import pytest
from activities.contexts import the_reference
from storymaths.activities.fit import fits, misfits
from storymaths.activities.work_out import WorkedOut, work_out
from storymaths.model.demands import Amount, Demands, Operation, amounts, operation


def reasons(year: int, **demands: object) -> list[str]:
    return misfits(Demands(**demands), the_reference().years[year], the_reference())  # type: ignore[arg-type]


def numbers(*values: object) -> tuple[Amount, ...]:
    return amounts(Fraction(str(value)) for value in values)


def adding(*values: int) -> tuple[Operation, ...]:
    return (operation("+", *values),)


@pytest.mark.parametrize(
    ("year", "demands", "reason"),
    [
        (2, {"amounts": numbers(101)}, "it has 101, and Year 2 meets numbers to 100"),
        (1, {"operations": adding(7, 34)}, "it adds or takes away with 34, and Year 1 does so with numbers to 20"),
        (3, {"operations": adding(3, 8, -5)}, "it has −5, and Year 3 does not yet go below zero"),
        (
            2,
            {"amounts": numbers("1/5", "3/5")},
            "it has 1/5 and 3/5, and Year 2 does not yet meet such parts of numbers",
        ),
        (4, {"amounts": numbers("1/16")}, "it has 1/16, and Year 4 does not yet meet such parts of numbers"),
        (1, {"signs": frozenset("<")}, "it uses the sign <, which is new in Year 2"),
        (0, {"signs": frozenset("≠")}, "it uses the sign =, which is new in Year 1"),
        (2, {"other_units": frozenset({"mm"})}, "it uses the unit mm, which is new in Year 3"),
        (1, {"clock": 15}, "it reads the clock to 15 minutes, and Year 1 does so to 30"),
        (2, {"charts": frozenset({"bar chart"})}, "it uses the chart bar chart, which is new in Year 3"),
        (2, {"tables": frozenset({3, 4, 5})}, "it leans on the 3 and 4 times tables, not yet known in Year 2"),
    ],
)
def test_why_it_does_not_fit(year: int, demands: dict[str, object], reason: str) -> None:
    assert reasons(year, **demands) == [reason]


@pytest.mark.parametrize(
    ("year", "demands"),
    [
        (2, {"amounts": numbers(100), "operations": adding(100)}),
        (1, {"signs": frozenset({"≠", "+", "−"})}),
        (2, {"amounts": numbers("1/3", "1/4", "1/2")}),
        (4, {"amounts": numbers("0.25", "1.5", "0.07")}),
        (5, {"amounts": numbers("0.125")}),
        (4, {"amounts": numbers(-3)}),
        (1, {"other_units": frozenset({"legs", "buttons"})}),
        (2, {"tables": frozenset({0, 1, 2, 5, 10})}),
        (2, {"clock": 5}),
        (0, {}),
    ],
)
def test_what_fits(year: int, demands: dict[str, object]) -> None:
    assert reasons(year, **demands) == []


def test_decimals_need_their_places() -> None:
    assert len(reasons(4, amounts=numbers("0.003"))) == 1
    assert reasons(5, amounts=numbers("0.003")) == []


def test_every_reason_at_once_and_the_years_it_fits() -> None:
    demands = Demands(amounts=numbers(120), operations=adding(120), signs=frozenset("<"), other_units=frozenset({"km"}))
    reference = the_reference()
    assert len(misfits(demands, reference.years[1], reference)) == 4
    assert [year for year, limits in sorted(reference.years.items()) if fits(demands, limits, reference)] == [4, 5, 6]
    assert fits(demands, reference.years[4], reference)


def test_limits_may_be_tighter_than_the_years_own() -> None:
    reference = the_reference()
    tight = reference.years[2].model_copy(update={"largest_number": 10, "largest_calculated": 10})
    assert misfits(Demands(amounts=numbers(11)), tight, reference) == ["it has 11, and Year 2 meets numbers to 10"]


def test_the_years_of_an_activity_are_those_its_task_is_set_in_with_the_signs_its_page_chooses() -> None:
    angle = worked("kind: angle\ntitle: Names\nfind: name\nangles: [60, 90]\n", 3)
    assert angle.years_it_fits(the_reference())[:1] == [3]
    less = 'kind: compare\ntitle: Signs\nstatements: [8 ? 13]\nsigns: [<, ">"]\n'
    assert [worked(less, 1, signs).years_it_fits(the_reference())[0] for signs in ((), ("<", ">"))] == [2, 1]


def worked(text: str, year: int, signs: tuple[str, ...] = ()) -> WorkedOut:
    return work_out(text, "page.md", 1, None, year, the_reference(), signs=signs)
