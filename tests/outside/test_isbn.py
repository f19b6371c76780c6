"""The check digit of an ISBN-13 against the worked example for ISO 2108, 978-3-16-148410-0."""

from __future__ import annotations

import pytest
from storymaths.check.isbn_wrong import check_digit


def test_the_worked_example() -> None:
    assert check_digit("978316148410") == "0"


@pytest.mark.parametrize("position", range(12))
def test_one_wrong_digit_is_always_noticed(position: int) -> None:
    right = "978316148410"
    for digit in "0123456789":
        if digit != right[position]:
            assert check_digit(right[:position] + digit + right[position + 1 :]) != "0"
