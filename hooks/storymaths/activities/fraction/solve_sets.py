"""Fractions of sets: which counts can be so shared, what part of the cast fits, who together have a fraction."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from itertools import combinations

from ...expression.noun import noun_of
from ...expression.number import WrittenNumber
from ...model.activity import Answer, CastMember, Context, Line, Shown, Solution, Task
from ...model.demands import Demands, operation
from ..given import need_cast, need_one
from ..kind import Unsolvable, whole_fact
from ..saying import spoken
from ..sentences import as_line
from . import say_sets as say
from .answers import Group, PartOfCast, SharedCount
from .calculation import part_of_one
from .demands import demands_of_numbers, demands_of_parts, demands_of_steps, demands_of_words, demands_of_written
from .drawing import cards_for_written, draw_bar
from .number import as_amount
from .say_amounts import explain_part
from .tasks import GroupsTask, SetTask, ShareTask

_COUNTS_SHOWN = 30


def find_counts(task: ShareTask, context: Context) -> Solution[SharedCount]:
    """Which counts have this fraction in whole things: from the smallest, or in the cast's order."""
    need_one(task, counts=task.counts, up_to=task.up_to, fact=task.fact)
    value, parts = part_of_one(task.fraction), task.fraction.value.denominator
    owned = _counts(task, context)
    counts = [count for _, count in owned]
    found = [
        (SharedCount(count, int(count * value), owner.id if owner else None), owner)
        for owner, count in owned
        if count % parts == 0
    ]
    if len(found) > context.caps.answers:
        message = f"There are {len(found):,} answers."
        fix = "choose smaller numbers or fewer things."
        raise Unsolvable(("up_to",), message, fix, "activity-too-many-answers")
    shown = counts if task.fact or len(counts) <= _COUNTS_SHOWN else []
    away = [count for count in counts if count % parts]
    return Solution(
        task=Task(
            say.ask_for_counts(value, None if shown else counts[-1]),
            context.characters if task.fact else (),
            tuple(Shown(f"{count:,}", Fraction(count)) for count in counts) if task.fact else (),
            (Line((", ".join(f"{count:,}" for count in shown),)),) if shown and not task.fact else (),
        ),
        answers=tuple(
            Answer(
                say.say_count(one, value, owner.name if owner else ""),
                explain_part(Fraction(one.count), value, context.year),
                one,
            )
            for one, owner in found
        ),
        demands=demands_of_numbers([*(shown or counts[-1:]), *(n for one, _ in found for n in (one.count, one.part))])
        | demands_of_parts([Fraction(one.count) for one, _ in found], value, context.year, "whole"),
        steps=1 + (value.numerator > 1),
        note=say.note_on_counts(parts, away, context.year),
        likely_error=say.expect_error_in_counts(away, parts),
        cards=cards_for_written(map(as_amount, [*shown, *(n for one, _ in found for n in (one.count, one.part))]), {}),
    )


def _counts(task: ShareTask, context: Context) -> list[tuple[CastMember | None, int]]:
    """Each count, with whose it is."""
    if task.fact:
        need_cast(context)
        values = whole_fact(context, task.fact)
        return [(character, values[character.id]) for character in context.characters]
    counts = task.counts or range(1, (task.up_to or 0) + 1)
    return [(None, count) for count in sorted(set(counts))]


def find_part_of_cast(task: SetTask, context: Context) -> Solution[PartOfCast]:
    """What fraction of the cast has a value of a fact: those who fit are counted, then all."""
    need_cast(context)
    wanted = True if task.has is None else task.has
    fits = [character for character in context.characters if character.facts.get(task.fact) == wanted]
    among, all_ = len(fits), len(context.characters)
    asked = Task(
        say.ask_for_part_of_cast(task, context), context.characters, lines=(Line(("", f" of the {all_} fit.")),)
    )
    told = [wanted] if isinstance(wanted, int) and not isinstance(wanted, bool) else []
    demands = demands_of_numbers([all_, *told])
    if not fits:
        cards = cards_for_written([as_amount(all_)], {})
        words = demands_of_words([], say.name_fraction(context.year))
        return Solution(asked, (), demands | words, 2, f"Nobody fits this: {say.label_of(task, context)}.", cards=cards)
    fraction = WrittenNumber.over(among, all_)
    found = PartOfCast(tuple(character.id for character in fits), fraction, as_amount(fraction.value))
    simpler = found.simplest.text != fraction.text
    return Solution(
        task=asked,
        answers=(Answer(say.say_part_of_cast(fits, all_, found), say.explain_part_of_cast(among, all_, found), found),),
        demands=demands
        | demands_of_numbers([among])
        | demands_of_written([fraction])
        | demands_of_words([], say.name_fraction(context.year), "equal")
        | Demands(signs=frozenset("=" if simpler else "")),
        steps=2 + simpler,
        note=say.NOTE_ON_SETS,
        likely_error=say.expect_error_in_set(among, all_),
        answer_figures=draw_bar(fraction, f"{all_}"),
        cards=cards_for_written([as_amount(among), as_amount(all_), fraction], {}),
    )


def find_groups(task: GroupsTask, context: Context) -> Solution[Group]:
    """Who together have exactly this fraction of all there is: smallest groups first, then in the cast's order."""
    need_cast(context)
    value, values = part_of_one(task.fraction), whole_fact(context, task.fact)
    total = sum(values.values())
    found = list(_groups_with(total * value, values))
    if len(found) > context.caps.answers:
        message = f"{len(found):,} groups have {spoken(value)} of it all."
        raise Unsolvable(("fact",), message, "choose fewer characters.", "activity-too-many-answers")
    about = context.facts.get(task.fact)
    things = task.noun(task.things) if task.things else noun_of(about)
    names = {character.id: character.name for character in context.characters}
    had = [[values[id_] for id_ in group.characters] for group in found]
    added = [operation("+", *numbers, sum(numbers)) for numbers in had if len(numbers) > 1]
    fraction, all_ = as_amount(value), as_amount(total)
    return Solution(
        task=Task(
            say.ask_for_groups(total, value, things),
            context.characters,
            tuple(Shown(f"{number:,}", Fraction(number)) for number in values.values()),
            (as_line((value, "of", total, "=", None)),),
        ),
        answers=tuple(
            Answer(
                say.say_group([names[id_] for id_ in group.characters], value, group.together),
                say.explain_group(numbers, total, value, context.year),
                group,
            )
            for group, numbers in zip(found, had, strict=True)
        ),
        demands=demands_of_numbers([total], 0, things)
        | demands_of_numbers([*values.values(), *(group.together for group in found)])
        | Demands(signs=frozenset("="))
        | demands_of_steps(added)
        | demands_of_parts([Fraction(total)] if found else [], value, context.year),
        steps=3,
        note=say.note_on_groups(task, total, bool(found), context),
        likely_error=say.expect_error_in_groups(value, found, context),
        cards=cards_for_written(
            [*map(as_amount, values.values()), *(as_amount(group.together) for group in found), all_, fraction],
            {"=": 1},
        ),
    )


def _groups_with(wanted: Fraction, values: Mapping[str, int]) -> Iterator[Group]:
    for size in range(1, len(values) + 1):
        for group in combinations(values, size):
            together = sum(values[id_] for id_ in group)
            if together == wanted:
                yield Group(group, together)
