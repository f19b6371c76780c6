"""How many of the published questions are put to the kinds: all 111 of them, and any that is not with the reason."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

from yaml_files import read_yaml

HERE = Path(__file__).parent
PARTS = re.compile(r"-(?:first|second|[a-d])$")
"""What the id of a question ends with where each of its parts is an activity of its own."""


def listed(path: Path) -> list[dict[str, Any]]:
    found: list[dict[str, Any]] = read_yaml(path)
    return found


def test_most_published_questions_are_expressed_and_the_rest_say_why_not() -> None:
    expressed = {PARTS.sub("", case["id"]) for path in HERE.glob("cases/*.yaml") for case in listed(path)}
    left = {case["id"]: case["why"] for case in listed(HERE / "cases_not_expressed.yaml")}
    assert len(expressed) >= 111
    assert not expressed & left.keys()
    assert all(left.values())
