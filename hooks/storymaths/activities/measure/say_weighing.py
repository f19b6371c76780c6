"""Levelling with weights, in words."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import islice

from ...model.activity import Figure, LikelyError, Line
from ...model.figures.measures import OnPan, Weighing
from ...model.year import YearLimits
from ..saying import capital, listed
from .amount import Amount, tell
from .tasks import LevelLoad
from .weighing import Pans
from .weight_set import WeightSet

_LISTED = 12


def ask_to_level(task: LevelLoad, load: Amount, year: YearLimits) -> str:
    """What is to be levelled, and on which pans."""
    what = "each of them" if task.fact else f"a load of {tell(load, year)}"
    return f"Level {what} with weights {_where(task.pans == 'both')}. Find every way."


def ask_for_loads(weights: WeightSet, most: int, year: YearLimits) -> str:
    """Which loads can be levelled."""
    return f"Which loads up to {tell(weights.amount(most), year)} can be levelled with weights {_where(weights.both)}?"


def _where(both: bool) -> str:
    return "on either pan" if both else "on the other pan"


def list_weights(weights: Sequence[Amount], year: YearLimits) -> Line:
    """``Weights: 1 kg and 2 kg``."""
    return Line((f"Weights: {listed([tell(weight, year) for weight in weights])}",))


def say_level(load: str, weights: WeightSet, pans: Pans, year: YearLimits) -> str:
    """Which weights balance what: ``10 kg and 2 kg balance seal``."""
    against, beside = ([tell(weights.amount(worth), year) for worth in side] for side in pans)
    return f"{listed(against)} {'balance' if len(against) > 1 else 'balances'} {listed([load, *beside])}"


def say_reached(load: int, weights: WeightSet, pans: Pans, year: YearLimits) -> str:
    """``A load of 3 kg: 2 kg and 1 kg balance it``."""
    return f"A load of {tell(weights.amount(load), year)}: {say_level('it', weights, pans, year)}"


def draw_level(load: str, weights: WeightSet, pans: Pans, year: YearLimits) -> Figure:
    """A balance with the weights on it."""
    against, beside = (tuple(OnPan("", tell(weights.amount(worth), year)) for worth in side) for side in pans)
    alt = f"A level balance. {capital(say_level(load, weights, pans, year))}."
    return Figure(Weighing(against, (OnPan(load, ""), *beside)), alt)


def note_tried(weights: WeightSet, without: Sequence[str]) -> str:
    """How many placings were tried, and whose load none of them levels."""
    tried = f"Every choice of weights was tried, {weights.placings:,} in all."
    return f"Nothing levels {listed(without, 'or')}. {tried}" if without else tried


def note_loads(weights: WeightSet, unreached: Iterator[int], count: int, year: YearLimits) -> str:
    """How many placings were tried, and the loads that none of them levels: the first of many, and how many more."""
    missing = [tell(weights.amount(load), year) for load in islice(unreached, _LISTED)]
    if count > _LISTED:
        missing.append(f"{count - _LISTED:,} more of them")
    outcome = f"Nothing levels {listed(missing, 'or')}." if missing else "Every load comes out."
    return f"{note_tried(weights, ())} {outcome}"


def expect_largest_first(taken: Sequence[Amount], left: Amount, year: YearLimits) -> LikelyError:
    """Taking the largest weight that fits, over and over."""
    weights = listed([tell(weight, year) for weight in taken])
    return LikelyError(
        "Always takes the largest weight that fits.", f"{weights}, and {tell(left, year)} that nothing levels"
    )
