"""Levelling a load with weights from a given set, and which loads a set can level at all."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from fractions import Fraction

from ...model.activity import Answer, Context, LikelyError, Solution, Task
from ...model.demands import Demands
from ...model.year import YearLimits
from ..given import need_one
from ..kind import Unsolvable
from ..saying import capital
from . import say_weighing as say
from .amount import Amount
from .answers import Levelled, Reached
from .measured import Measured, add_all, measured_of_cast, show
from .sums import demands_of_sentences, demands_of_told, write_sentences
from .tasks import LevelLoad, ReachLoads
from .weighing import Pans, levelled, reached
from .weight_set import WeightSet, weight_set_of

_DRAWN = 6
Found = tuple[Measured, Pans]


def level(task: LevelLoad, context: Context) -> Solution[Levelled]:
    """Every way to level the load, or each of the cast: fewest weights first, then the largest first."""
    loads, year = _loads_of(task, context), context.year
    weights = weight_set_of(task, [load.amount for load in loads])
    ways = levelled([weights.steps(load.amount) for load in loads], weights.counts, weights.both)
    found = [(load, pans) for load, some in zip(loads, ways, strict=True) for pans in some]
    if len(found) > context.caps.answers:
        message = f"There are {len(found):,} ways to level it."
        raise Unsolvable(("weights",), message, "use fewer weights.", "activity-too-many-answers")
    given = [load.amount for load in loads]
    return Solution(
        Task(
            say.ask_to_level(task, given[0], year),
            context.characters if task.fact else (),
            tuple(show(amount.as_one, year) for amount in given) if task.fact else (),
            (say.list_weights(task.weights, year),),
        ),
        tuple(_answers(found, weights, year)),
        _demands([*task.weights, *given], [(weights.steps(load.amount), way) for load, way in found], weights, year),
        max((len(against) + len(beside) for _, (against, beside) in found), default=1),
        say.note_tried(weights, [load.name for load, some in zip(loads, ways, strict=True) if not some]),
        _expect_largest_first(weights, given[0], year) if found else None,
        tuple(say.draw_level(load.name, weights, pans, year) for load, pans in found[:_DRAWN]),
    )


def _loads_of(task: LevelLoad, context: Context) -> list[Measured]:
    need_one(task, load=task.load, fact=task.fact)
    return [Measured("", "the load", task.load)] if task.load else measured_of_cast(task, context)


def _answers(found: Sequence[Found], weights: WeightSet, year: YearLimits) -> Iterator[Answer[Levelled]]:
    for load, pans in found:
        against, beside = map(weights.numbers, pans)
        yield Answer(
            capital(say.say_level(load.name, weights, pans, year)),
            write_sentences([weights.balance(weights.steps(load.amount), pans)], year),
            Levelled(against, beside, load.id or None),
        )


def _demands(
    told: Sequence[Amount], placings: Sequence[tuple[int, Pans]], weights: WeightSet, year: YearLimits
) -> Demands:
    sentences = [weights.balance(load, pans) for load, pans in placings]
    words = ("balance",) if placings else ()
    return demands_of_told((one.as_one for one in told), year, words) | demands_of_sentences(sentences, year)


def _expect_largest_first(weights: WeightSet, load: Amount, year: YearLimits) -> LikelyError | None:
    """Putting the largest weight that fits each time, where that leaves some of the load."""
    left, taken = weights.steps(load), list[Amount]()
    for worth in sorted(Counter(weights.counts).elements(), reverse=True):
        if worth <= left:
            taken.append(weights.amount(worth))
            left -= worth
    return say.expect_largest_first(taken, weights.amount(left), year) if left and taken else None


def reach(task: ReachLoads, context: Context) -> Solution[Reached]:
    """Every load from 1 up that the weights can level, each with the way of fewest weights."""
    weights, year = weight_set_of(task), context.year
    all_ = add_all((weight.into(weights.unit) for weight in task.weights), weights.unit).number
    together = weights.steps(Amount(all_, weights.unit))
    most = weights.steps(Amount(Fraction(task.up_to), weights.unit)) if task.up_to else together
    found = reached(min(most, together), weights.counts, weights.both)
    if len(found) > context.caps.answers:
        message = f"The weights level {len(found):,} different loads."
        raise Unsolvable(("up_to",), message, "choose a smaller load to go up to.", "activity-too-many-answers")
    unreached = (load for load in range(1, most + 1) if load not in found)
    return Solution(
        Task(say.ask_for_loads(weights, most, year), lines=(say.list_weights(task.weights, year),)),
        tuple(
            Answer(
                say.say_reached(load, weights, pans, year),
                write_sentences([weights.balance(load, pans)], year),
                Reached(weights.number(load), *map(weights.numbers, pans)),
            )
            for load, pans in found.items()
        ),
        _demands([*task.weights, weights.amount(most)], list(found.items()), weights, year),
        len(task.weights),
        say.note_loads(weights, unreached, most - len(found), year),
    )
