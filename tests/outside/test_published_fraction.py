"""Published questions on fractions, worked out again."""

from __future__ import annotations

import pytest
from outside.published_amounts import Case, agrees, published
from storymaths.activities import fraction

KINDS = {"fraction": fraction.KIND}


@pytest.mark.parametrize("case", published("fraction"), ids=str)
def test_the_published_answer_is_found(case: Case) -> None:
    agrees(case, KINDS)
