"""Levelling a load with weights from a given set, and which loads a set can level at all."""

from __future__ import annotations

from collections import Counter
from fractions import Fraction
from itertools import islice
from math import lcm
from typing import TYPE_CHECKING

from ...model.activity import Answer, Context, Figure, LikelyError, Solution, Task
from ..kind import Unsolvable
from ..saying import capital, listed, plain
from .amount import Amount, in_sum, say
from .weighing import MOST_TRIED, Pans, choices, levelled, reached
from .words import like_units, named_amounts, solution

if TYPE_CHECKING:
    from . import MeasureFields

_DRAWN, _MISSING_TOLD = 6, 6


class _Set:
    """Weights in the smallest useful step, so that they are whole numbers."""

    def __init__(self, fields: MeasureFields, context: Context, loads: list[Amount]) -> None:
        self.amounts, self.both = list(fields.weights), fields.pans == "both"
        for loc, amounts in (("weights", self.amounts), ("load", loads)):
            if any(amount.number <= 0 for amount in amounts):
                raise Unsolvable((loc,), "Something there weighs nothing.", "give every weight a mass more than 0.")
        self.unit = like_units([*self.amounts, *loads], ("weights",))
        in_unit = [amount.into(self.unit).number for amount in [*self.amounts, *loads]]
        self._step = Fraction(1, lcm(*(number.denominator for number in in_unit)))
        self.weights = Counter(self.steps(amount) for amount in self.amounts)
        if choices(self.weights, self.both) > MOST_TRIED:
            message = f"{len(self.amounts)} weights can be put on the pans in too many ways to try."
            raise Unsolvable(("weights",), message, "use fewer weights, or one pan.")
        self._context = context

    def steps(self, amount: Amount) -> int:
        """An amount in whole steps."""
        return int(amount.into(self.unit).number / self._step)

    def number(self, steps: int) -> Fraction:
        """Steps in the unit."""
        return steps * self._step

    def say(self, steps: int) -> str:
        """Steps as a mass in words."""
        return say(Amount(self.number(steps), self.unit), self._context.year)

    def told(self, load: str, pans: Pans) -> str:
        """Which weights balance what: ``10 kg and 2 kg balance seal``."""
        against, beside = ([self.say(worth) for worth in side] for side in pans)
        return f"{listed(against)} {'balance' if len(against) > 1 else 'balances'} {listed([load, *beside])}"

    def worked(self, load: int, pans: Pans) -> str:
        """The number sentence that says it is level."""
        sides = [pans[0], (load, *pans[1])]
        sums = [
            " + ".join(in_sum(Amount(self.number(worth), self.unit), self._context.year) for worth in side)
            for side in sides
        ]
        return f"{sums[0]} = {sums[1]}."

    def figure(self, load: str, pans: Pans) -> Figure:
        """A balance with the weights on it."""
        left = [["", self.say(worth)] for worth in pans[0]]
        right = [[load, ""], *(["", self.say(worth)] for worth in pans[1])]
        return Figure("weighing", {"left": left, "right": right}, f"A level balance. {capital(self.told(load, pans))}.")


def level(fields: MeasureFields, context: Context) -> Solution:
    """Every way to level the load, or each of the cast: fewest weights first, then the largest first."""
    loads = named_amounts(fields, context)
    if fields.load is not None:
        loads = [("", "the load", fields.load), *loads]
    pans = _Set(fields, context, [amount for _, _, amount in loads])
    answers, figures, empty = [], [], []
    found = levelled([pans.steps(amount) for _, _, amount in loads], pans.weights, pans.both)
    for (id_, name, amount), ways in zip(loads, found, strict=True):
        called = name or say(amount, context.year)
        for way in ways:
            data = {
                "against": [plain(pans.number(worth)) for worth in way[0]],
                "beside": [plain(pans.number(worth)) for worth in way[1]],
            } | ({"player": id_} if id_ else {})
            answers.append(Answer(f"{capital(pans.told(called, way))}.", pans.worked(pans.steps(amount), way), data))
            figures.append(pans.figure(called, way))
        if not ways:
            empty.append(called)
    if len(answers) > context.caps.answers:
        message = f"There are {len(answers):,} ways to level it."
        raise Unsolvable(("weights",), message, "use fewer weights.", "activity-too-many-answers")
    where = "on either pan" if pans.both else "on the other pan"
    what = "each of them" if fields.fact else f"a load of {say(loads[0][2], context.year)}"
    task = Task(
        f"Level {what} with weights {where}. Find every way.",
        context.characters if fields.fact else (),
        tuple(say(amount, context.year) for _, _, amount in loads) if fields.fact else (),
        (f"Weights: {listed([say(amount, context.year) for amount in fields.weights])}",),
    )
    note = f"Every choice of weights was tried, {choices(pans.weights, pans.both):,} in all."
    if empty:
        note = f"Nothing levels {listed(empty, 'or')}. {note}"
    steps = max((len(answer.data["against"]) + len(answer.data["beside"]) for answer in answers), default=1)
    return solution(task, answers, steps, note, _slip_of_largest(pans, loads[0][2], answers), tuple(figures[:_DRAWN]))


def _slip_of_largest(pans: _Set, load: Amount, answers: list[Answer]) -> LikelyError | None:
    """Putting the largest weight that fits each time, where that leaves some of the load."""
    left, taken = pans.steps(load), []
    for worth in sorted(pans.weights.elements(), reverse=True):
        if worth <= left:
            taken.append(worth)
            left -= worth
    if not left or not answers or not taken:
        return None
    gives = f"{listed([pans.say(worth) for worth in taken])}, and {pans.say(left)} that nothing levels"
    return LikelyError("Always takes the largest weight that fits.", gives)


def reach(fields: MeasureFields, context: Context) -> Solution:
    """Every load from 1 up that the weights can level, each with the way of fewest weights."""
    pans = _Set(fields, context, [])
    all_ = sum((amount.into(pans.unit).number for amount in fields.weights), Fraction(0))
    most = pans.steps(Amount(min(all_, Fraction(fields.up_to or all_)), pans.unit))
    found = reached(most, pans.weights, pans.both)
    if len(found) > context.caps.answers:
        message = f"The weights level {len(found):,} different loads."
        raise Unsolvable(("up_to",), message, "choose a smaller load to go up to.", "activity-too-many-answers")
    answers = [
        Answer(
            f"A load of {pans.say(load)}: {pans.told('it', way)}.",
            pans.worked(load, way),
            {
                "load": plain(pans.number(load)),
                "against": [plain(pans.number(worth)) for worth in way[0]],
                "beside": [plain(pans.number(worth)) for worth in way[1]],
            },
        )
        for load, way in found.items()
    ]
    where = "on either pan" if pans.both else "on the other pan"
    task = Task(
        f"Which loads up to {pans.say(most)} can be levelled with weights {where}?",
        lines=(f"Weights: {listed([say(amount, context.year) for amount in fields.weights])}",),
    )
    unreached = (load for load in range(1, most + 1) if load not in found)
    missing = [pans.say(load) for load in islice(unreached, _MISSING_TOLD)]
    tried = f"Every choice of weights was tried, {choices(pans.weights, pans.both):,} in all."
    note = f"{tried} Nothing levels {listed(missing, 'or')}." if missing else f"{tried} Every load comes out."
    return solution(task, answers, len(fields.weights), note)
