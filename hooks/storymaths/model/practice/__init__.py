"""What activities of a year are made of: pools of numbers, times, coins, scales and steps, one part a kind."""

from __future__ import annotations

from ..fields import Strict
from .bonds import BondsPractice
from .chart import ChartPractice
from .measure import MeasurePractice
from .money import MoneyPractice
from .position import PositionPractice
from .share import SharePractice


class Practice(Strict):
    """All that a year practises. Each part is read from ``site_data/practice/``, from the file of its name."""

    bonds: BondsPractice
    chart: ChartPractice
    measure: MeasurePractice
    money: MoneyPractice
    position: PositionPractice
    share: SharePractice
