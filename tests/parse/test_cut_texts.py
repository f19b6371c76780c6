"""Sentences that YAML cuts are found, and nothing else is taken for one."""

from __future__ import annotations

import pytest
from storymaths.parse.cut_texts import cut_texts
from storymaths.parse.yaml_text import compose


@pytest.mark.parametrize(
    ("front", "found"),
    [
        ("objects: Use row #2 and #3 with 12 jars.", [("#", "Use row")]),
        ("objects: Use row # 2 with 12 jars.", [("#", "Use row")]),
        ("ask:\n  - Look at row #2.\n", [("#", "Look at row")]),
        ("hear: [Five, because I counted them all.]", [(",", "Five")]),
        ("hear: [It is level., Six, and then one more.]", [(",", "Six")]),
        # Notes of an author, and texts that are whole.
        ("name: Act it out # the part they like best", []),
        ("status: draft # take this line out", []),
        ("minutes: 45 #2 steps of it", []),
        ('objects: "Use row #2 and #3."', []),
        ("objects: >-\n  Use row #2, and then #3.\n", []),
        ("objects: Use row#2 with 12 jars.", []),
        ('hear: ["Five, because I counted them all."]', []),
        ("hear: [One answer., Another answer.]", []),
        ("again: [equal to, not equal to, equals sign]", []),
        ("years: [Reception, 1, 2]", []),
        ("names: [Oak, Elm, and so on]", []),
        ("objects: Six, and then one more.", []),
    ],
)
def test_what_is_cut(front: str, found: list[tuple[str, str]]) -> None:
    assert [(sign, left) for _, sign, left in cut_texts(front, compose(front))] == found
