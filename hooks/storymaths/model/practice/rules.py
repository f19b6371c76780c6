"""How a year says the rules that numbers and facts are sorted and tried by."""

from __future__ import annotations

from typing import Literal

from .rows import PracticeRow


class RulesPractice(PracticeRow):
    """The properties a year calls by their names."""

    names: tuple[Literal["multiple", "factor"], ...]
    """Of those that can be told in other words, such as a multiple: reached when counting in fives."""
