"""What activities of a year are made of: pools of numbers, times, coins, scales and steps, one part a kind."""

from __future__ import annotations

from ..fields import Strict
from .bonds import BondsPractice
from .money import MoneyPractice
from .position import PositionPractice
from .rules import RulesPractice
from .sequence import SequencePractice
from .share import SharePractice
from .sort import SortPractice


class Practice(Strict):
    """All that a year practises. Each part is read from ``site_data/practice/``, from the file of its name."""

    bonds: BondsPractice
    money: MoneyPractice
    position: PositionPractice
    rules: RulesPractice
    sequence: SequencePractice
    share: SharePractice
    sort: SortPractice
