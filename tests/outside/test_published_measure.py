"""Published questions on measures and units of time, worked out again."""

from __future__ import annotations

import pytest
from outside.published_amounts import Case, agrees, published
from storymaths.activities import measure

KINDS = {"measure": measure.KIND}


@pytest.mark.parametrize("case", published("measure"), ids=str)
def test_the_published_answer_is_found(case: Case) -> None:
    agrees(case, KINDS)
