"""Published questions on money, worked out again."""

from __future__ import annotations

import pytest
from outside.published_amounts import Case, agrees, published
from storymaths.activities import measure, money

KINDS = {"measure": measure.KIND, "money": money.KIND}


@pytest.mark.parametrize("case", published("money"), ids=str)
def test_the_published_answer_is_found(case: Case) -> None:
    agrees(case, KINDS)
