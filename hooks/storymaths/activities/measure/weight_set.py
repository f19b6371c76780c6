"""A set of weights in steps small enough that every weight and load is a whole number of them."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import lcm

from ..kind import Unsolvable
from .amount import Amount
from .measured import find_common_unit
from .sums import Sentence, join
from .tasks import LevelLoad, ReachLoads
from .weighing import MOST_TRIED, Pans, count_placings


@dataclass(frozen=True, slots=True)
class WeightSet:
    """How many there are of each weight, in steps of so much of a unit; ``both`` where they may stand on either pan."""

    counts: Mapping[int, int]
    both: bool
    unit: str
    step: Fraction

    @property
    def placings(self) -> int:
        """How many ways there are to put them on the pans, right or wrong."""
        return count_placings(self.counts, self.both)

    def steps(self, amount: Amount) -> int:
        """An amount in whole steps."""
        return int(amount.into(self.unit).number / self.step)

    def number(self, steps: int) -> Fraction:
        """Steps in the unit."""
        return steps * self.step

    def amount(self, steps: int) -> Amount:
        """Steps as an amount."""
        return Amount(self.number(steps), self.unit)

    def numbers(self, side: Sequence[int]) -> tuple[Fraction, ...]:
        """The weights of one pan, in the unit."""
        return tuple(map(self.number, side))

    def balance(self, load: int, pans: Pans) -> Sentence:
        """The number sentence that says it is level."""
        against, beside = ([*map(self.amount, side)] for side in pans)
        return (*join(against, "+"), "=", *join([self.amount(load), *beside], "+"))


def weight_set_of(task: LevelLoad | ReachLoads, loads: Sequence[Amount] = ()) -> WeightSet:
    """The weights of a task, for the loads. Raises ``Unsolvable``."""
    for loc, amounts in (("weights", task.weights), ("load", loads)):
        if any(amount.number <= 0 for amount in amounts):
            raise Unsolvable((loc,), "Something there weighs nothing.", "give every weight a mass more than 0.")
    both = [*task.weights, *loads]
    unit = find_common_unit(both, ("weights",))
    step = Fraction(1, lcm(*(amount.into(unit).number.denominator for amount in both)))
    counts = Counter(int(weight.into(unit).number / step) for weight in task.weights)
    found = WeightSet(counts, task.pans == "both", unit, step)
    if found.placings > MOST_TRIED:
        message = f"{len(task.weights)} weights can be put on the pans in too many ways to try."
        raise Unsolvable(("weights",), message, "use fewer weights, or one pan.")
    return found
