"""Small parts against the test cylinder of 16 CFR 1501.4 and its Figure 1 (USA, Consumer Product Safety Commission).

The cylinder is 1.25 inches across and slopes from 1 inch to 2.25 inches deep. The 1 inch is from memory; the others
were read in the source. UK coin diameters: The Royal Mint's specifications, as listed in secondary sources.
"""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from project import reference
from storymaths.model.material import (
    CYLINDER_ACROSS_MM,
    CYLINDER_DEEP_MM,
    CYLINDER_SHALLOW_MM,
    LONGEST_THAT_COULD_FIT_MM,
    Material,
    small_part,
)

INCH = 25.4
COINS = {"1p": 20.3, "2p": 25.9, "5p": 18.0, "10p": 24.5, "20p": 21.4, "50p": 27.3, "£1": 23.43, "£2": 28.4}


def test_the_cylinder_in_millimetres() -> None:
    assert pytest.approx(1.25 * INCH, abs=0.06) == CYLINDER_ACROSS_MM
    assert pytest.approx(1.00 * INCH, abs=0.06) == CYLINDER_SHALLOW_MM
    assert pytest.approx(2.25 * INCH, abs=0.06) == CYLINDER_DEEP_MM
    assert math.hypot(1.25 * INCH, 2.25 * INCH) <= LONGEST_THAT_COULD_FIT_MM


@pytest.mark.parametrize(
    ("sides", "verdict"),
    [
        ((10, 10, 10), "yes"),
        ((16, 16, 16), "yes"),
        ((20, 20, 20), "yes"),
        ((22.4, 22.4, 22.4), "yes"),
        ((25.4, 25.4, 25.4), "unknown"),
        ((35, 35, 35), "no"),
        ((114, 10, 2), "no"),
        ((60, 10, 2), "unknown"),
    ],
)
def test_blocks(sides: tuple[float, float, float], verdict: str) -> None:
    assert small_part(sides) == verdict


@pytest.mark.parametrize(("coin", "across"), COINS.items())
def test_all_eight_coins_fit(coin: str, across: float) -> None:
    disc = Material(id="coin", name=coin, plural=coin, size_mm=(across, across, 3.0), round=True, allergens=())
    assert disc.is_small_part == "yes"


@given(*[st.floats(1, 90)] * 3)
def test_a_smaller_block_is_never_less_of_a_small_part(a: float, b: float, c: float) -> None:
    order = {"no": 0, "unknown": 1, "yes": 2}
    assert order[small_part((a * 0.9, b * 0.9, c * 0.9))] >= order[small_part((a, b, c))]


@given(*[st.floats(1, 90)] * 3)
def test_what_surely_fits_does_fit_standing_up(a: float, b: float, c: float) -> None:
    """Standing on its smallest face, within the circle and below the shallow side."""
    if small_part((a, b, c)) == "yes":
        thin, middle, longest = sorted((a, b, c))
        assert math.hypot(thin, middle) <= 1.25 * INCH
        assert longest <= 1.0 * INCH


@pytest.mark.parametrize(
    ("item", "verdict"),
    [
        ("interlocking-cube", "yes"),
        ("dice", "yes"),
        ("marble", "yes"),
        ("buttons", "yes"),
        ("lolly-stick", "no"),
        ("ruler", "no"),
    ],
)
def test_things_in_the_cupboard(item: str, verdict: str) -> None:
    assert reference().materials[item].is_small_part == verdict
