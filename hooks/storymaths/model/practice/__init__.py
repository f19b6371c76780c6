"""What activities of a year are made of: pools of numbers, times, coins, scales and steps, one part a kind."""

from __future__ import annotations

from ..fields import Strict
from .bonds import BondsPractice
from .fraction import FractionPractice
from .money import MoneyPractice
from .position import PositionPractice
from .share import SharePractice


class Practice(Strict):
    """All that a year practises. Each part is read from ``site_data/practice/``, from the file of its name."""

    bonds: BondsPractice
    fraction: FractionPractice
    money: MoneyPractice
    position: PositionPractice
    share: SharePractice
