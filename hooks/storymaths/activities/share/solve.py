"""Sharing worked out: every answer of a task, and what it demands."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from math import isqrt

from ...model.activity import Answer, CastMember, Context, Figure, Line, Shown, Solution, Task
from ...model.demands import Demands, amounts
from ...model.figures.amounts import Array
from ..alike import numbers_in as numbers_written_in
from ..kind import Unsolvable
from ..saying import counted, written
from ..sentences import Sentence, as_line, cards_for, numbers_in, signs_in
from . import say
from .calculation import (
    count_all,
    count_in_steps,
    find_steps,
    find_tables,
    find_unwritten_steps,
    in_groups,
    write_sentence,
)
from .given import OwnedPile, groups_of, piles_of, receivers_of, total_of
from .tasks import (
    CastPilesTask,
    EachTask,
    Groups,
    GroupsTask,
    InGroups,
    Parts,
    PartsTask,
    Pile,
    PilesTask,
    ShareAnswer,
    Shares,
    ShareTask,
    Together,
    TotalTask,
    WaysTask,
)

_MOST_DRAWN, _MOST_DOTS, _MOST_ACROSS = 6, 60, 12


def solve(task: ShareTask, context: Context) -> Solution[ShareAnswer]:
    """Every answer: groups rising, or in the order of the piles. Raises ``Unsolvable``."""
    values = tuple(find_answers(task, context))
    found = [in_groups(task, value) for value in values]
    receivers = receivers_of(task, context)
    piles = piles_of(task, context) if isinstance(task, (PilesTask, CastPilesTask)) else ()
    owned = [pile for pile, who in piles if who]
    sentence = write_sentence(task, found[0], context.year) if found else ()
    arrays = _arrays(task, found, receivers)
    laid = [*owned, *(number for value in values for number in _laid(value))]
    return Solution(
        task=Task(
            ask=say.ask_for(task, found, context),
            characters=receivers if task.fact is None else context.characters,
            shows=tuple(Shown(written(pile), Fraction(pile)) for pile in owned),
            lines=(as_line(sentence),) if sentence else _name_piles(task, piles),
            figures=arrays if isinstance(task, TotalTask) else (),
            filled_once=isinstance(task, (EachTask, GroupsTask, TotalTask)),
            asks_after=tuple(written(pile) for pile, who in piles if not who),
        ),
        answers=tuple(
            Answer(say.say_answer(task, value, context), say.explain(task, one, context.year), value)
            for value, one in zip(values, found, strict=True)
        ),
        demands=_demands(task, values, sentence, context),
        steps=1 + any(one.left for one in found) + isinstance(task, (WaysTask, PilesTask, CastPilesTask)),
        note=say.explain_all(task, found, context),
        likely_error=say.find_error(task, found, context),
        answer_figures=() if isinstance(task, TotalTask) else arrays,
        cards=cards_for(laid, (sentence,)),
    )


def _name_piles(task: ShareTask, piles: Sequence[OwnedPile]) -> tuple[Line, ...]:
    """The piles, where the author's own words for the task do not name them all."""
    if not isinstance(task, PilesTask) or not task.ask or set(task.piles) <= set(numbers_written_in(task.ask)):
        return ()
    return (Line((", ".join(written(pile) for pile, _ in piles),)),)


def find_answers(task: ShareTask, context: Context) -> Iterator[ShareAnswer]:
    """What comes of it, in a stated order. Raises ``Unsolvable``."""
    match task:
        case EachTask():
            groups = groups_of(task, context)
            each, left = divmod(total_of(task, context), groups)
            gets = {character.id: each for character in receivers_of(task, context)}
            yield Shares(groups, each, left, gets or None)
        case GroupsTask():
            groups, left = divmod(total_of(task, context), task.each)
            yield Groups(groups, task.each, left)
        case TotalTask():
            yield _put_together(groups_of(task, context), task.each, context)
        case PartsTask():
            yield _share_in_parts(task, context)
        case WaysTask():
            yield from _find_ways(task, context)
        case _:
            yield from _find_piles(task, context)


def _put_together(groups: int, each: int, context: Context) -> Together:
    if groups * each > context.caps.number:
        message = f"{groups:,} groups of {each:,} make more than {context.caps.number:,}."
        raise Unsolvable(("each",), message, "use smaller numbers.")
    return Together(groups, each, 0, groups * each)


def _share_in_parts(task: PartsTask, context: Context) -> Parts:
    if len(task.parts) < 2:
        raise Unsolvable(("parts",), "One alone has nobody to share with.", "name at least two characters.")
    each, left = divmod(total_of(task, context), sum(task.parts.values()))
    return Parts({character.id: task.parts[character.id] * each for character in receivers_of(task, context)}, left)


def _find_ways(task: WaysTask, context: Context) -> Iterator[Groups]:
    total = total_of(task, context)
    most, shared = total if task.most is None else task.most, total - task.left_over
    if task.fewest > most:
        message = f"There are to be at least {task.fewest:,} groups and at most {most:,}."
        raise Unsolvable(("fewest",), message, "make fewest smaller, or most larger.")
    if shared < 1:
        message = f"{task.left_over:,} cannot be left over of {total:,} that are shared."
        raise Unsolvable(("left_over",), message, "leave fewer over.")
    # With as many left over as go into a group, another group could be made of them.
    ways = [groups for groups in divisors(shared) if shared // groups > task.left_over]
    ways = [groups for groups in ways if task.fewest <= groups <= most]
    if len(ways) > context.caps.answers:
        message = f"There are {len(ways)} ways, more than {context.caps.answers}."
        raise Unsolvable(("total",), message, "share fewer things.", "activity-too-many-answers")
    yield from (Groups(groups, shared // groups, task.left_over) for groups in ways)


def divisors(number: int) -> list[int]:
    """Every whole number that divides it, rising."""
    small = [n for n in range(1, isqrt(number) + 1) if number % n == 0]
    return small + [number // n for n in reversed(small) if n * n != number]


def _find_piles(task: PilesTask | CastPilesTask, context: Context) -> Iterator[Pile]:
    piles, by, left = piles_of(task, context), task.by, task.left_over
    if (task.among is None) == (task.each is None):
        message = "How the piles are to be shared is not clear."
        raise Unsolvable(("among",), message, "add among, or each, and not both.", "activity-broken")
    if left >= by:
        message = f"{left:,} cannot be left over: with {by:,} at a time, another share could be made of them."
        raise Unsolvable(("left_over",), message, f"leave fewer than {by:,} over.")
    for pile, owner in piles:
        times, over = divmod(pile, by)
        if over == left and times:
            groups, each = (by, times) if task.among else (times, by)
            yield Pile(pile, groups, each, left, owner.id if owner else None)


def _demands(task: ShareTask, values: Sequence[ShareAnswer], sentence: Sentence, context: Context) -> Demands:
    year, found = context.year, [in_groups(task, value) for value in values]
    written_down = [step for one in found for step in find_steps(task, one, year)]
    numbers = {number for step in written_down for number in step.numbers}
    numbers |= {Fraction(number) for number in (*numbers_in(sentence), *_numbers_given(task, context))}
    numbers |= {Fraction(number) for value in values for number in _laid(value)}
    for one in found:
        numbers |= {Fraction(number) for number in (one.groups, one.each, count_all(one), *count_in_steps(one, year))}
    return Demands(
        amounts=amounts(numbers),
        operations=(*written_down, *(step for one in found for step in find_unwritten_steps(one, year))),
        signs=frozenset({*signs_in(sentence), *(sign for step in written_down for sign in (step.sign, "="))}),
        words=tuple(say.find_words(task, values, year)),
        tables=frozenset().union(*(find_tables(one, year) for one in found)),
    )


def _numbers_given(task: ShareTask, context: Context) -> Iterator[int]:
    """The numbers in the question that no answer need have."""
    if isinstance(task, (WaysTask, PilesTask, CastPilesTask)) and task.left_over:
        yield task.left_over
    match task:
        case WaysTask():
            yield total_of(task, context)
            if task.fewest > 1 or task.most:
                yield from (task.fewest, task.most or task.fewest)
        case PartsTask():
            yield from task.parts.values()
        case PilesTask() | CastPilesTask():
            yield from (task.by, *(pile for pile, _ in piles_of(task, context)))


def _laid(value: ShareAnswer) -> Iterator[int]:
    """The numbers an answer says, which are laid with cards; of a pile only how it comes out."""
    match value:
        case Parts():
            yield from value.gets.values()
        case Together():
            yield from (value.groups, value.each, value.total)
        case Shares():
            yield value.each
        case _:
            yield from (value.groups, value.each)
    if value.left:
        yield value.left


def _arrays(task: ShareTask, found: Sequence[InGroups], receivers: Sequence[CastMember]) -> tuple[Figure, ...]:
    """Dots in rows for every answer, where all can be drawn."""
    drawable = all(
        0 < one.each <= _MOST_ACROSS and one.groups <= _MOST_ACROSS and count_all(one) <= _MOST_DOTS for one in found
    )
    if isinstance(task, PartsTask) or len(found) > _MOST_DRAWN or not drawable:
        return ()
    labels = tuple(character.name for character in receivers)
    return tuple(
        Figure(
            Array(one.groups, one.each, one.left, labels),
            f"Dots in {counted(one.groups, 'rows')} of {one.each}{f' and {one.left} more' if one.left else ''}.",
        )
        for one in found
    )
