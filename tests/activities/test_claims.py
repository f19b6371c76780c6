"""What an author says of the answers: right ones pass however written, wrong ones are told apart by name."""

from __future__ import annotations

from typing import Any

import pytest
from activities.trials import read
from hypothesis import given, settings
from hypothesis import strategies as st
from storymaths.activities.balance import KIND as BALANCE
from storymaths.activities.claims import claim_fault, claims_none
from storymaths.activities.compare import KIND as COMPARE
from storymaths.activities.kind import Kind

CAST = {name: {"mass": mass} for name, mass in {"gull": 2, "crab": 3, "puffin": 5, "limpet": 6, "seal": 9}.items()}
RIGHT = [
    ["gull", "crab", "=", "puffin"],
    ["gull", "limpet", "=", "crab", "puffin"],
    ["crab", "limpet", "=", "seal"],
    ["gull", "seal", "=", "puffin", "limpet"],
]


def said_of(kind: Kind[Any], claim: object, **data: object) -> str | None:
    fields, context = read(kind, {"answers": claim, **data})
    fault = claim_fault(kind, fields, kind.solve(fields, context))
    return fault[0] if fault else None


def of_balance(claim: object, **cast: int) -> str | None:
    return said_of(BALANCE, claim, cast={n: {"mass": m} for n, m in cast.items()} or CAST)


def test_a_number_that_is_right_or_wrong() -> None:
    assert of_balance(4) is None
    assert of_balance(3) == "You say 3; there are 4. One of them: gull + crab = puffin."
    assert of_balance(5, gull=2, crab=3, seal=5) == "You say 5; there is 1: gull + crab = seal."
    assert (of_balance(2, gull=2, crab=3) or "").startswith("You say 2; there are none. There is no way.")
    assert of_balance(0, gull=2, crab=3) is None


@given(st.data())
@settings(max_examples=200, deadline=None)
def test_the_order_of_addends_sides_and_list_does_not_count(data: st.DataObject) -> None:
    written = []
    for parts in data.draw(st.permutations(RIGHT)):
        at = parts.index("=")
        sides = [data.draw(st.permutations(side)) for side in (parts[:at], parts[at + 1 :])]
        gap = data.draw(st.sampled_from(["", " ", "  "]))
        text = f"{gap}={gap}".join(f"{gap}+{gap}".join(side) for side in data.draw(st.permutations(sides)))
        written.append(data.draw(st.sampled_from([text, text.upper(), f" {text}. "])))
    assert of_balance(written) is None


def test_a_list_names_what_is_missing_what_is_none_and_what_is_there_twice() -> None:
    claim = ["gull + crab = puffin", "gull = crab", "puffin = crab + gull", "crab + limpet = seal"]
    assert of_balance(claim) == (
        "You list 4; there are 4. Not an answer: gull = crab. "
        "Not in your list: gull + limpet = crab + puffin and gull + seal = puffin + limpet. "
        "In your list twice: puffin = crab + gull."
    )
    assert of_balance([]) == (
        "You list none; there are 4. Not in your list: gull + crab = puffin, gull + limpet = crab + puffin, "
        "crab + limpet = seal and gull + seal = puffin + limpet."
    )


def test_where_order_matters_it_counts() -> None:
    statements = ["6 + 3 = 5 + 4", "3 < 4"]
    assert said_of(COMPARE, ["6+3 = 5+4", "3<4"], statements=statements) is None
    assert "Not an answer: 4 + 5 = 6 + 3" in (said_of(COMPARE, ["4 + 5 = 6 + 3", "3 < 4"], statements=statements) or "")


@pytest.mark.parametrize(("claim", "none"), [(0, True), ([], True), (1, False), (None, False), (["x"], False)])
def test_who_claims_that_there_is_none(claim: object, none: bool) -> None:
    fields, _ = read(BALANCE, {"answers": claim, "cast": CAST})
    assert claims_none(fields) is none
