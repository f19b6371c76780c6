"""Finds the one order by a fact, or every order that clues allow, and what it demands."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import groupby

from ...model.activity import Answer, CastMember, Context, Line, Shown, Solution, Task
from ...model.demands import Demands, amounts
from ...model.quantity import UNITS
from ..kind import Unsolvable, whole_fact
from .clues import Clue, read_clue
from .say import Groups, Speaker
from .search import Orders, too_few_to_clash
from .tasks import OrderByClues, OrderByFact, OrderFound, OrderTask

_WORDS = ("order", "least", "most")


def solve(task: OrderTask, context: Context) -> Solution[OrderFound]:
    """Every answer, sorted as the cast is listed. Raises ``Unsolvable``."""
    if len(context.characters) < 2:
        raise Unsolvable(("cast",), "An order needs at least two characters.", "add characters to the cast.")
    return _by_clues(task, context) if isinstance(task, OrderByClues) else _by_fact(task, context)


def _by_fact(task: OrderByFact, context: Context) -> Solution[OrderFound]:
    values = whole_fact(context, task.fact, ("cast",), below_nought=True)
    ranked = sorted(context.characters, key=lambda character: values[character.id])
    rising = [tuple(group) for _, group in groupby(ranked, key=lambda character: values[character.id])]
    say = Speaker(task, context)
    order = say.turn(rising)
    numbers = [values[character.id] for character in context.characters]
    return Solution(
        task=Task(
            say.ask_by_fact(),
            context.characters,
            tuple(Shown(say.amount(number), amounts((number,))[0].number) for number in numbers),
            # Where the equals are is for pupils to find.
            (Line(("", *[", "] * (len(context.characters) - 1), "")),),
            figures=(say.draw(()),),
        ),
        answers=(Answer(say.name(order), say.explain(order, values), _found(order)),),
        demands=Demands(
            amounts=amounts(numbers, say.unit if say.unit in UNITS else ""),
            signs=_signs_read(say, order),
            words=_WORDS,
        ),
        steps=len(rising) - 1 or 1,
        note=say.note_by_fact(order),
        likely_error=say.err_in_digits([values[group[0].id] for group in order]),
        answer_figures=(say.draw(order),),
    )


def _signs_read(say: Speaker, order: Groups) -> frozenset[str]:
    ties = any(len(group) > 1 for group in order)
    return frozenset(([say.sign] if say.sign else []) + (["="] if ties and say.equals_known else []))


def _by_clues(task: OrderByClues, context: Context) -> Solution[OrderFound]:
    if not task.clues:
        raise Unsolvable(("kind",), "There is nothing to order by.", "give a fact, or clues.")
    count, rising = len(context.characters), task.starting == "least"
    clues = [read_clue(text, context.characters, rising, ("clues", n)) for n, text in enumerate(task.clues)]
    if task.fact:
        _check_against(whole_fact(context, task.fact, ("cast",)), clues, context, task.fact)
    found = Orders(count, clues)
    if not found.number and task.answers != 0:
        clash = too_few_to_clash(count, clues)
        names = " and ".join(f'"{clue.text}"' for clue in clash)
        raise Unsolvable(clash[-1].loc, f"These clues cannot all be true: {names}.", "change one of them.")
    if found.number > min(context.caps.answers, task.at_most):
        message = f"The clues allow {found.number:,} orders, more than a class can list."
        fix = "add a clue, or choose fewer characters."
        raise Unsolvable(("clues",), message, fix, "activity-too-many-answers")
    say = Speaker(task, context)
    first_placed = sorted(found, key=lambda order: order if rising else order[::-1])
    orders = [say.turn([(context.characters[index],) for index in order]) for order in first_placed]
    signs = {say.sign} | {clue.sign for clue in clues} if say.sign else set()
    return Solution(
        task=Task(
            say.ask_by_clues(),
            context.characters,
            lines=tuple(Line((line,)) for line in say.tell_clues(clues)),
            figures=(say.draw(()),),
        ),
        answers=tuple(Answer(say.name(order), say.explain_by_clues(clues), _found(order)) for order in orders),
        demands=Demands(signs=frozenset(filter(None, signs)), words=_WORDS),
        steps=len(clues),
        note=say.note_by_clues(clues, orders),
        likely_error=say.err_in_clues(clues, orders),
        answer_figures=tuple(say.draw(order) for order in orders[:3]),
    )


def _found(order: Groups) -> OrderFound:
    return OrderFound(tuple(tuple(character.name for character in group) for group in order))


def _check_against(values: Mapping[str, int], clues: Sequence[Clue], context: Context, fact: str) -> None:
    """That the facts, where they are stated, bear every clue out."""
    ranked = sorted(range(len(context.characters)), key=lambda index: values[context.characters[index].id])
    for clue in clues:
        if not _is_true(clue, ranked, [values[character.id] for character in context.characters]):
            named: list[CastMember] = [context.characters[index] for index in clue.who]
            have = ", ".join(f"{character.name} has {values[character.id]}" for character in named)
            message = f'"{clue.text}" is not so: {have}.'
            raise Unsolvable(clue.loc, message, f"change the clue, or the {fact} of one of them.")


def _is_true(clue: Clue, ranked: Sequence[int], values: Sequence[int]) -> bool:
    if len({values[index] for index in clue.who}) < len(clue.who):
        return False  # of two that are equal neither comes first
    placed, last = 0, None
    for newcomer in ranked:
        if not clue.allows(newcomer, placed, last, len(ranked)):
            return False
        placed, last = placed | 1 << newcomer, newcomer
    return True
