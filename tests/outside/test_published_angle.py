"""Published questions that the kind angle can express come to their published answers."""

from __future__ import annotations

from typing import Any

import pytest
from outside.published_cases import cases_of
from outside.published_data import holds
from storymaths.activities.angle import KIND


@pytest.mark.parametrize("case", cases_of(KIND), ids=lambda case: case["id"])
def test_it_comes_to_the_published_answer(case: dict[str, Any]) -> None:
    holds(KIND, case)
