"""Whether a solution is within the reach of a year, and the reasons given when it is not."""

from __future__ import annotations

from fractions import Fraction

import pytest
from activities.contexts import the_reference
from storymaths.activities.fit import fits, misfits, years_that_fit
from storymaths.model.activity import Demands


def reasons(year: int, **demands: object) -> list[str]:
    return misfits(Demands(**demands), the_reference().years[year], the_reference())  # type: ignore[arg-type]


def numbers(*values: object) -> tuple[Fraction, ...]:
    return tuple(Fraction(str(value)) for value in values)


@pytest.mark.parametrize(
    ("year", "demands", "reason"),
    [
        (2, {"numbers": numbers(101)}, "it has 101, and Year 2 meets numbers to 100"),
        (1, {"calculated": numbers(7, 34)}, "it adds or takes away with 34, and Year 1 does so with numbers to 20"),
        (3, {"calculated": numbers(3, 8, -5)}, "it has −5, and Year 3 does not yet go below zero"),
        (
            2,
            {"numbers": numbers("1/5", "3/5")},
            "it has 1/5 and 3/5, and Year 2 does not yet meet such parts of numbers",
        ),
        (4, {"numbers": numbers("1/16")}, "it has 1/16, and Year 4 does not yet meet such parts of numbers"),
        (1, {"symbols": frozenset("<")}, "it uses the sign <, which is new in Year 2"),
        (0, {"symbols": frozenset("≠")}, "it uses the sign =, which is new in Year 1"),
        (2, {"units": frozenset({"mm"})}, "it uses the unit mm, which is new in Year 3"),
        (2, {"tables": frozenset({3, 4, 5})}, "it leans on the 3 and 4 times tables, not yet known in Year 2"),
    ],
)
def test_why_it_does_not_fit(year: int, demands: dict[str, object], reason: str) -> None:
    assert reasons(year, **demands) == [reason]


@pytest.mark.parametrize(
    ("year", "demands"),
    [
        (2, {"numbers": numbers(100), "calculated": numbers(100)}),
        (1, {"symbols": frozenset({"≠", "+", "−"})}),
        (2, {"numbers": numbers("1/3", "1/4", "1/2")}),
        (4, {"numbers": numbers("0.25", "1.5", "0.07")}),
        (5, {"numbers": numbers("0.125")}),
        (4, {"numbers": numbers(-3)}),
        (1, {"units": frozenset({"legs", "buttons"})}),
        (2, {"tables": frozenset({0, 1, 2, 5, 10})}),
        (0, {}),
    ],
)
def test_what_fits(year: int, demands: dict[str, object]) -> None:
    assert reasons(year, **demands) == []


def test_decimals_need_their_places() -> None:
    assert len(reasons(4, numbers=numbers("0.003"))) == 1
    assert reasons(5, numbers=numbers("0.003")) == []


def test_every_reason_at_once_and_the_years_it_fits() -> None:
    demands = Demands(numbers=numbers(120), calculated=numbers(120), symbols=frozenset("<"), units=frozenset({"km"}))
    reference = the_reference()
    assert len(misfits(demands, reference.years[1], reference)) == 4
    assert years_that_fit(demands, reference) == [4, 5, 6]
    assert fits(demands, reference.years[4], reference)


def test_limits_may_be_tighter_than_the_years_own() -> None:
    reference = the_reference()
    tight = reference.years[2].model_copy(update={"largest_number": 10, "largest_calculated": 10})
    assert misfits(Demands(numbers=numbers(11)), tight, reference) == ["it has 11, and Year 2 meets numbers to 10"]
