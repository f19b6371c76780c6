"""A balance for another year: other values, kept in the story's order, with which the same teams are level."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import islice

from ...model.activity import Context
from ...model.year import YearLimits
from ..revalue import SAME_NUMBERS
from .beam import set_up
from .tasks import BalanceTask
from .trial import Trial, Values, bring_nearer

_Offer = tuple[Values, str]
_STEPS = 20_000
_SMALL = 60
_BLENDED = 12
_SMALLEST_TOP = 40


def versions_of(task: BalanceTask, context: Context, year: YearLimits) -> Iterator[tuple[BalanceTask, Context, str]]:
    """Casts for ``year``, best first: each can be added within the year and gives a wished number of answers.

    For a younger year, or the same, what is as near as can be to the balance as it is; for an older one numbers of
    its size. Casts with which the same teams are level come before those with which others are.
    """
    old = set_up(task, context).question.masses
    levels = tuple(sorted(set(old)))
    trial = Trial(task, context, year, [levels.index(mass) for mass in old])
    top = min(year.largest_calculated, year.largest_number, context.caps.number, _SMALLEST_TOP)
    small = list(islice(_same_teams_level(trial, levels, top), _SMALL))
    seen: set[Values] = set()
    for values, why in _offers(trial, levels, small):
        if values not in seen and trial.comes_out(values):
            yield task, trial.with_values(values), why
        seen.add(values)


def _offers(trial: Trial, levels: Values, small: Sequence[Values]) -> Iterator[_Offer]:
    said = trial.task.fact.replace("_", " ").replace("-", " ")
    same_teams = "Other numbers, in the same order; the same teams are level."
    near = [(levels, SAME_NUMBERS), *((values, same_teams) for values in _best_first(small, trial, levels))]
    blends = [(values, same_teams) for values in _best_first(_blends(trial, levels, small), trial, levels)]
    times = [
        (tuple(value * factor for value in levels), f"Every {said} is {factor} times as much.")
        for factor in sorted(trial.year.tables, reverse=True)
        if factor > 1
    ]
    harder = trial.year.year > trial.context.year.year
    yield from [*blends, *times, *near] if harder else [*near, *blends, *times]
    for values in bring_nearer(trial, len(levels)):
        yield values, "Other numbers, in the same order; other teams are level."


def _best_first(candidates: Iterable[Values], trial: Trial, old: Values) -> list[Values]:
    """Those that come out: with as many answers as before first, then the most that cross ten, then the smallest."""
    count = len(trial.balances(old))
    across = trial.year.largest_calculated > 10

    def merit(values: Values) -> tuple[bool, int, int, Values]:
        crossings = trial.crossings(values) if across else 0
        return len(trial.balances(values)) != count, -crossings, values[-1], values

    return sorted((values for values in candidates if trial.comes_out(values)), key=merit)


def _blends(trial: Trial, old: Values, small: Sequence[Values]) -> Iterator[Values]:
    """So many times the old values plus small ones: where both level a team, so does their blend."""
    for times in trial.year.practice.balance.blends:
        for values in small[:_BLENDED]:
            yield tuple(times * a + b for a, b in zip(old, values, strict=True))


def _same_teams_level(trial: Trial, levels: Values, top: int) -> Iterator[Values]:
    """Rising values up to ``top`` with which every team level before is level still, the smallest first."""
    due = _sums_by_highest_level(trial, levels)
    steps = _STEPS

    def grow(values: Values) -> Iterator[Values]:
        nonlocal steps
        if len(values) == len(levels):
            yield values
            return
        for value in _next_values(values, due[len(values)], top):
            steps -= 1
            if steps < 0:
                return
            grown = (*values, value)
            if all(_nought(counts, grown) for counts in due[len(values)]):
                yield from grow(grown)

    yield from grow(())


def _sums_by_highest_level(trial: Trial, levels: Values) -> list[list[tuple[int, ...]]]:
    """For each level, the sums that must come to nought once it is settled: left minus right, counted by level."""
    due: list[list[tuple[int, ...]]] = [[] for _ in levels]
    for left, right in trial.balances(levels):
        counts = [0] * len(levels)
        for index, level in enumerate(trial.rank):
            counts[level] += (left >> index & 1) - (right >> index & 1)
        settled = [level for level, count in enumerate(counts) if count]
        if settled:
            due[settled[-1]].append(tuple(counts[: settled[-1] + 1]))
    return due


def _nought(counts: Sequence[int], values: Values) -> bool:
    return sum(count * value for count, value in zip(counts, values, strict=True)) == 0


def _next_values(values: Values, due: Sequence[tuple[int, ...]], top: int) -> Iterable[int]:
    """What the next level may be: anything larger, or the one value with which a team is level."""
    least = values[-1] + 1 if values else 1
    if not due:
        return range(least, top + 1)
    counts = due[0]
    others = -sum(count * value for count, value in zip(counts, values, strict=False))
    value, rest = divmod(others, counts[-1])
    return (value,) if rest == 0 and least <= value <= top else ()
