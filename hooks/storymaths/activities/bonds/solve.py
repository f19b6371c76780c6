"""Bonds worked out: every way to make the whole, and what it demands."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import combinations, islice

from ...model.activity import Answer, Context, Figure, Shown, Solution, Task
from ...model.demands import Demands, amounts
from ...model.figures.amounts import BondStairs, PartWhole
from ..kind import Unsolvable, whole_fact
from ..saying import counted, listed, written
from ..sentences import Sentence, as_line, cards_for, signs_in
from . import say
from .given import count_missing, find_step, holders_of, known_of, order_counts, pickers_of, split_of, whole_of
from .split import orders_of
from .tasks import Bond, BondsTask, CastTask, MissingTask, SplitTask, WholeTask

_MOST_STEPS_DRAWN, _LONGEST_DRAWN = 21, 20


def solve(task: BondsTask, context: Context) -> Solution[Bond]:
    """Every way, the first part rising from its smallest, then the second. Raises ``Unsolvable``."""
    bonds = find_bonds(task, context)
    year, pickers = context.year, pickers_of(task, context)
    missing = count_missing(task, context)
    brought = [whole_fact(context, task.fact)[picker.id] for picker in pickers] if isinstance(task, CastTask) else []
    sentence = _write_sentence(task, context) if say.writes_sums(year) else ()
    return Solution(
        task=Task(
            ask=say.ask_for(task, context),
            characters=pickers or holders_of(task, context),
            shows=tuple(Shown(written(number), Fraction(number)) for number in brought),
            lines=(as_line(sentence),) if sentence else (),
            figures=(_draw_model(task, context),),
        ),
        answers=tuple(Answer(say.say_bond(task, bond, context), say.explain(task, bond, year), bond) for bond in bonds),
        demands=_demands(task, bonds, sentence, brought, context),
        steps=max(1, missing if isinstance(task, MissingTask) else missing - 1) + (len(bonds) > 1),
        note=say.explain_all(task, bonds, context),
        likely_error=say.find_error(task, bonds, context),
        answer_figures=_draw_stairs(task, bonds),
        cards=cards_for([*brought, *(number for bond in bonds for number in _laid(task, bond))], (sentence,)),
    )


def find_bonds(task: BondsTask, context: Context) -> tuple[Bond, ...]:
    """Every way. Raises ``Unsolvable``."""
    whole = whole_of(task, context)
    match task:
        case WholeTask():
            return (Bond(whole, task.known, tuple(holder.id for holder in holders_of(task, context)) or None),)
        case CastTask():
            return _within_cap(_choose(task, whole, context), context)
        case _:
            return tuple(sorted(_within_cap(_split(task, context), context), key=lambda bond: bond.parts))


def _choose(task: CastTask, whole: int, context: Context) -> Iterator[Bond]:
    values, pickers = whole_fact(context, task.fact), pickers_of(task, context)
    if len(pickers) < task.parts:
        message = f"There are {len(pickers)} characters to choose {task.parts} from."
        raise Unsolvable(("cast",), message, "add characters, or take fewer parts.")
    for who in combinations([picker.id for picker in pickers], task.parts):
        parts = tuple(values[id_] for id_ in who)
        if sum(parts) == whole:
            yield Bond(whole, parts, who)


def _split(task: SplitTask | MissingTask, context: Context) -> Iterator[Bond]:
    known, who = known_of(task), tuple(holder.id for holder in holders_of(task, context))
    for way in split_of(task, context).ways(task.whole - sum(known), known):
        for order in orders_of(way) if order_counts(task, context) else [way]:
            yield Bond(task.whole, known + order, who or None)


def _within_cap(bonds: Iterator[Bond], context: Context) -> tuple[Bond, ...]:
    found = tuple(islice(bonds, context.caps.answers + 1))
    if len(found) > context.caps.answers:
        raise Unsolvable(
            ("whole",),
            f"There are more than {context.caps.answers} ways.",
            "make the whole smaller, or allow fewer parts with smallest, largest or step.",
            "activity-too-many-answers",
        )
    return found


def _write_sentence(task: BondsTask, context: Context) -> Sentence:
    whole = None if isinstance(task, WholeTask) else whole_of(task, context)
    parts: list[int | None] = [*known_of(task), *[None] * count_missing(task, context)]
    return (whole, "=", parts[0], *(token for part in parts[1:] for token in ("+", part)))


def _demands(
    task: BondsTask, bonds: Sequence[Bond], sentence: Sentence, brought: Sequence[int], context: Context
) -> Demands:
    year = context.year
    operations = tuple(find_step(task, bond, year) for bond in bonds)
    numbers = {whole_of(task, context), *known_of(task), *brought, *(part for bond in bonds for part in bond.parts)}
    if isinstance(task, (SplitTask, MissingTask)):
        numbers |= {task.smallest} if task.smallest else set()
        numbers |= {task.step} if task.step > 1 else set()
        numbers |= {task.largest} if task.largest is not None else set()
    signs = {*signs_in(sentence), *(one.sign for one in operations if say.writes_sums(year))}
    return Demands(amounts(numbers), operations, frozenset(signs), words=tuple(say.find_words(task, context)))


def _laid(task: BondsTask, bond: Bond) -> tuple[int, ...]:
    """The numbers an answer says, which are laid with cards."""
    if isinstance(task, CastTask):
        return (bond.whole,)
    return bond.parts if bond.who else (bond.whole, *bond.parts)


def _draw_model(task: BondsTask, context: Context) -> Figure:
    whole = "?" if isinstance(task, WholeTask) else written(whole_of(task, context))
    parts = [written(part) for part in known_of(task)] + ["?"] * count_missing(task, context)
    said = listed([part.replace("?", "an empty box") for part in parts])
    shown = whole.replace("?", "an empty box")
    alt = f"A part–whole model: the whole is {shown}, the parts are {said}."
    return Figure(PartWhole(whole, tuple(parts), in_dots=not context.year.writes), alt)


def _draw_stairs(task: BondsTask, bonds: Sequence[Bond]) -> tuple[Figure, ...]:
    """The ways as bars of two colours under one another, when they are pairs and small enough to draw."""
    pairs = tuple((bond.parts[0], bond.parts[1]) for bond in bonds if len(bond.parts) == 2)
    if not isinstance(task, (SplitTask, MissingTask)) or not 1 < len(pairs) <= _MOST_STEPS_DRAWN:
        return ()
    if not 0 < task.whole <= _LONGEST_DRAWN:
        return ()
    said = "; ".join(f"{a} and {b}" for a, b in pairs)
    return (Figure(BondStairs(pairs), f"Bars of {counted(task.whole, 'squares')} in two colours: {said}."),)
