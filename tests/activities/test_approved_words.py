"""What each kind says, held against what was read and approved; a change of words is to be read before it is kept."""

from __future__ import annotations

import pytest
from activities.approved_words import APPROVED, words_of
from storymaths.activities.table import KINDS


@pytest.mark.parametrize("name", KINDS)
def test_words_are_those_approved(name: str) -> None:
    approved = (APPROVED / f"{name}.txt").read_text(encoding="utf-8")
    assert words_of(KINDS[name]) == approved, "read the change; then keep it: see approved_words.py"
