"""The fourteen allergens against Annex II to Regulation (EU) No 1169/2011, as kept in UK law."""

from __future__ import annotations

from typing import get_args

import pytest
from project import reference
from storymaths.model.material import Allergen

# The fourteen heads of Annex II, in its order.
ANNEX_II = [
    "cereals containing gluten", "crustaceans", "eggs", "fish", "peanuts", "soybeans", "milk", "nuts", "celery", "mustard",
    "sesame seeds", "sulphur dioxide and sulphites", "lupin", "molluscs",
]  # fmt: skip


def test_they_are_those_of_annex_ii() -> None:
    assert sorted(get_args(Allergen)) == sorted(ANNEX_II)
    assert len(ANNEX_II) == 14


@pytest.mark.parametrize(
    ("item", "allergen"),
    [
        ("playdough", "cereals containing gluten"),
        ("pasta-shapes", "cereals containing gluten"),
        ("bread-slice", "cereals containing gluten"),
        ("cheese-cubes", "milk"),
    ],
)
def test_foods_the_annex_names_outright(item: str, allergen: str) -> None:
    """Wheat and milk are named in heads 1 and 7 of the Annex; the rest follows from what the thing is made of."""
    assert allergen in reference().materials[item].allergens
