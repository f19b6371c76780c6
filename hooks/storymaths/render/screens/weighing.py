"""Loads to level with weights: the beam tilts by what is really on it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction

from ...activities.measure.amount import Amount, tell
from ...activities.measure.answers import Levelled, MeasureAnswer, Reached
from ...activities.measure.measured import measured_of_cast
from ...activities.measure.tasks import LevelLoad, MeasureTask, ReachLoads
from ...activities.measure.weighing import Pans, levelled
from ...activities.measure.weight_set import WeightSet, weight_set_of
from ...activities.worked import Worked
from .board import Board, Piece, Place, keyed
from .pieces import card_id

_MOST_LOADS = 16
"""Cards of loads that lie on the tray at once beside the weights."""
_MOST_PLACINGS = 1000
Weighed = Worked[MeasureTask, MeasureAnswer]


def boards(worked: Weighed) -> Iterator[Board]:
    """One beam for each load that weights level; one for all loads, where they are to be found."""
    match worked.fields:
        case LevelLoad() as task:
            yield from _level(worked, task)
        case ReachLoads() as task:
            yield from _reach(worked, task)


def _level(worked: Weighed, task: LevelLoad) -> Iterator[Board]:
    cast = {one.id: one for one in worked.context.characters} if task.fact else {}
    amounts = [task.load] if task.load else [one.amount for one in measured_of_cast(task, worked.context)]
    weights, year = weight_set_of(task, amounts), worked.context.year
    values = (answer.value for answer in worked.solution.answers)
    levels = {value.character for value in values if isinstance(value, Levelled)}
    for who, amount in zip(cast or [None], amounts, strict=True):
        if who in levels:
            name, picture = (cast[who].name, cast[who].picture) if who else ("the load", "")
            steps = weights.steps(amount)
            load = Piece("load", name, picture, tell(amount, year), sort="load", worth=steps, stays=True)
            says = f"Level {name}." if len(amounts) > 1 else ""
            ways = levelled([steps], weights.counts, weights.both)[0]
            yield _beam(worked, weights, says, [load], [[(load, pans)] for pans in ways], {"load": [load.id]})


def _reach(worked: Weighed, task: ReachLoads) -> Iterator[Board]:
    """A card for each load that may be asked about; any way to level one is that load's."""
    weights, year = weight_set_of(task), worked.context.year
    found = [answer.value for answer in worked.solution.answers]
    most = max(int(value.load / weights.step) for value in found if isinstance(value, Reached))
    if most <= _MOST_LOADS and weights.placings <= _MOST_PLACINGS:
        asked = min(_MOST_LOADS, weights.steps(Amount(Fraction(task.up_to), weights.unit))) if task.up_to else most
        loads = [
            Piece(f"load-{one}", tell(weights.amount(one), year), shows="load", sort="load", worth=one)
            for one in range(1, max(most, asked) + 1)
        ]
        ways = levelled([load.worth for load in loads], weights.counts, weights.both)
        placed = [[(load, pans) for pans in some] for load, some in zip(loads, ways, strict=True) if some]
        yield _beam(worked, weights, "", loads, placed)


def _beam(
    worked: Weighed,
    weights: WeightSet,
    says: str,
    loads: Sequence[Piece],
    found: Iterable[Iterable[tuple[Piece, Pans]]],
    start: Mapping[str, Sequence[str]] | None = None,
) -> Board:
    """The load's pan on the left, which takes weights too where they may stand beside it."""
    beside_load = "" if weights.both else "load"
    places = (Place("load", "the load’s pan", takes=beside_load), Place("weights", "the other pan", takes="weight"))
    if not weights.both:
        places = (replace(places[0], holds=1), places[1])
    told = {worth: tell(weights.amount(worth), worked.context.year) for worth in sorted(weights.counts)}
    pieces = tuple(
        Piece(
            card_id(told[worth]), told[worth], copies=weights.counts[worth], sort="weight", worth=worth, look="weight"
        )
        for worth in told
    )
    ids = {piece.worth: piece.id for piece in pieces}
    ways = [
        [
            {"load": [load.id, *(ids[one] for one in beside)], "weights": [ids[one] for one in against]}
            for load, (against, beside) in each
        ]
        for each in found
    ]
    return Board("beam", says, (*loads, *pieces), places, keyed(places, ways), start=start or {})
