"""A few made-up inputs of each sort, put through every stage; ``tests/bench/fuzz.py`` puts through as many as one likes.

Whatever passes the check can be drawn, printed, put on the class screen, listed and packed, in both frames; whatever does not is
told in words. The inputs are made from a seed, and are the same each time.
"""

from __future__ import annotations

import pytest
from bench.fuzz import fuzz

SEED = 20270111
HOW_MANY = {"page": 12, "activity": 20, "drawing": 20, "tree": 3, "site data": 2}


@pytest.mark.parametrize(("of", "number"), HOW_MANY.items())
def test_nothing_that_is_put_in_breaks_anything(of: str, number: int) -> None:
    tally = fuzz(SEED, range(number), of)
    assert tally.done.total() == number
    found = {
        key: (one.stage, one.number, one.given.path, one.given.text)
        for key, one in tally.findings.items()
        if "slow" not in key
    }
    assert found == {}
