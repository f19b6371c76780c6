"""What activities of a year are made of: pools of numbers, times, coins, scales and steps, one part a kind."""

from __future__ import annotations

from ..fields import Strict
from .balance import BalancePractice
from .bonds import BondsPractice
from .clock import ClockPractice
from .money import MoneyPractice
from .position import PositionPractice
from .sequence import SequencePractice
from .shape import ShapePractice
from .share import SharePractice


class Practice(Strict):
    """All that a year practises. Each part is read from ``site_data/practice/``, from the file of its name."""

    balance: BalancePractice
    bonds: BondsPractice
    clock: ClockPractice
    money: MoneyPractice
    position: PositionPractice
    sequence: SequencePractice
    shape: ShapePractice
    share: SharePractice
