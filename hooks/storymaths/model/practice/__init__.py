"""What activities of a year are made of: pools of numbers, times, coins, scales and steps, one part a kind."""

from __future__ import annotations

from ..fields import Strict
from .bonds import BondsPractice
from .compare import ComparePractice
from .money import MoneyPractice
from .number_sentence import NumberSentencePractice
from .position import PositionPractice
from .share import SharePractice


class Practice(Strict):
    """All that a year practises. Each part is read from ``site_data/practice/``, from the file of its name."""

    bonds: BondsPractice
    compare: ComparePractice
    money: MoneyPractice
    number_sentence: NumberSentencePractice
    position: PositionPractice
    share: SharePractice
