"""What activities of a year are made of: pools of numbers, times, coins, scales and steps, one part a kind."""

from __future__ import annotations

from ..fields import Strict
from .always_sometimes_never import AlwaysSometimesNeverPractice
from .angle import AnglePractice
from .balance import BalancePractice
from .bonds import BondsPractice
from .chart import ChartPractice
from .clock import ClockPractice
from .compare import ComparePractice
from .coordinates import CoordinatesPractice
from .fraction import FractionPractice
from .measure import MeasurePractice
from .money import MoneyPractice
from .number_sentence import NumberSentencePractice
from .position import PositionPractice
from .rules import RulesPractice
from .sequence import SequencePractice
from .shape import ShapePractice
from .share import SharePractice
from .sort import SortPractice


class Practice(Strict):
    """All that a year practises. Each part is read from ``site_data/practice/``, from the file of its name."""

    always_sometimes_never: AlwaysSometimesNeverPractice
    angle: AnglePractice
    balance: BalancePractice
    bonds: BondsPractice
    chart: ChartPractice
    clock: ClockPractice
    compare: ComparePractice
    coordinates: CoordinatesPractice
    fraction: FractionPractice
    measure: MeasurePractice
    money: MoneyPractice
    number_sentence: NumberSentencePractice
    position: PositionPractice
    rules: RulesPractice
    sequence: SequencePractice
    shape: ShapePractice
    share: SharePractice
    sort: SortPractice
