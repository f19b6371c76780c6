"""Values for a balance tried out quickly: do they come out, and small changes that bring them nearer."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from random import Random

from ...model.activity import Context
from ...model.year import YearLimits
from ..kind import Unsolvable
from .beam import set_up
from .search import Teams
from .tasks import BalanceTask

Values = tuple[int, ...]
"""A value for each level: characters that are equal share a level, and levels rise."""
_CHANGES = 1000
_CHANGES_A_START = 60
_LARGEST = 1000
"""Among larger values hardly any two teams are level by chance."""


@dataclass(frozen=True, slots=True)
class Trial:
    """The balance an author asks for, to be tried with other values in a year."""

    task: BalanceTask
    context: Context
    year: YearLimits
    rank: Sequence[int]
    """The level of each character."""

    def with_values(self, values: Values) -> Context:
        """The context with each character worth the value of its level."""
        characters = tuple(
            replace(character, facts={**character.facts, self.task.fact: values[rank]})
            for character, rank in zip(self.context.characters, self.rank, strict=True)
        )
        return replace(self.context, characters=characters)

    def balances(self, values: Values) -> list[Teams]:
        """Every pair of teams that is level with these values."""
        self.context.effort.spend(10 + 3 ** (len(self.rank) // 2) // 5)
        try:
            return set_up(self.task, self.with_values(values)).search()
        except Unsolvable:  # such as a start that these values would make level
            return []

    def comes_out(self, values: Values) -> bool:
        """Whether the number of answers is as wished and no number is too much for the year."""
        return self.distance(values) == 0

    def distance(self, values: Values) -> int:
        """How far from coming out: answers too many or too few, and answers whose teams are too much for the year."""
        if values[-1] > self.year.largest_number:
            return _CHANGES
        fewest, most = self.task.wished
        found = self.balances(values)
        self.context.effort.spend(2 * len(found))
        too_much = sum(self._total(values, left) > self.year.largest_calculated for left, _ in found)
        return max(0, fewest - len(found)) + max(0, len(found) - most) + too_much

    def crossings(self, values: Values) -> int:
        """In how many answers the ones of some team pass ten: what makes the adding worth practising."""
        return sum(any(self._passes_ten(values, team) for team in teams) for teams in self.balances(values))

    def _passes_ten(self, values: Values, team: int) -> bool:
        ones = [values[rank] % 10 for index, rank in enumerate(self.rank) if team >> index & 1]
        return len(ones) > 1 and sum(ones) > 10

    def _total(self, values: Values, team: int) -> int:
        return sum(values[rank] for index, rank in enumerate(self.rank) if team >> index & 1)


def bring_nearer(trial: Trial, levels: int) -> Iterator[Values]:
    """Rising values that come out, reached by changing one at a time. The same every time it is asked."""
    year = trial.year
    top = min(year.largest_number, year.largest_calculated, trial.context.caps.number, _LARGEST)
    if top < levels:
        return
    chance = Random(levels * 1000 + top)
    for _ in range(_CHANGES // _CHANGES_A_START):
        values = _spread(chance, levels, top)
        distance = trial.distance(values)
        for _ in range(_CHANGES_A_START):
            if distance == 0:
                yield values
                break
            changed = _one_changed(chance, values, top)
            nearer = trial.distance(changed)
            if nearer <= distance:
                values, distance = changed, nearer


def _spread(chance: Random, levels: int, top: int) -> Values:
    """Values so far apart that few teams are level: each somewhat more than the one before."""
    share = min(top, max(levels, 2 * top // 3))
    return tuple(sorted(chance.sample(range(1, share + 1), levels)))


def _one_changed(chance: Random, values: Values, top: int) -> Values:
    index = chance.randrange(len(values))
    others = values[:index] + values[index + 1 :]
    value = chance.randint(1, min(top, 2 * values[-1] + 3))
    return values if value in others else tuple(sorted((*others, value)))
