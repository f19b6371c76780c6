"""How many of a thing a class needs."""

from __future__ import annotations

import pytest
from activities.contexts import the_reference
from storymaths.model.session import Needed


@pytest.mark.parametrize(
    ("per", "count", "children", "group", "wanted"),
    [
        ("child", 1, 30, 5, 30), ("pair", 18, 30, 5, 270), ("pair", 1, 31, 5, 16), ("group", 2, 30, 5, 12), ("group", 1, 31, 4, 8),
        ("class", 1, 30, 5, 1), ("class", 3, 1, 5, 3), ("child", 2, 0, 5, 0),
    ],
)  # fmt: skip
def test_needed(per: str, count: int, children: int, group: int, wanted: int) -> None:
    needed = Needed.model_validate({"item": "counter", "count": count, "per": per})
    assert needed.for_class(children, group) == wanted


def test_what_is_poured_is_not_counted() -> None:
    materials = the_reference().materials
    assert [materials["bowl"].counted(n) for n in (1, 4)] == ["1 bowl", "4 bowls"]
    assert materials["water"].counted(1) == "water"
