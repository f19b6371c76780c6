"""Fractions of sets: which counts can be so shared, what part of the cast fits, who together have a fraction."""

from __future__ import annotations

from fractions import Fraction
from itertools import combinations
from typing import TYPE_CHECKING

from ...model.activity import Answer, Context, LikelyError, Solution, Task
from ..kind import Unsolvable, whole_fact
from ..saying import capital, counted, listed, mixed, plain, spoken, written
from .number import WrittenNumber
from .words import a_part, bar, shared_out, solution

if TYPE_CHECKING:
    from . import FractionFields

_COUNTS_SHOWN = 30


def share(fields: FractionFields, context: Context) -> Solution:
    """Which counts have this fraction in whole things: from the smallest, or in the cast's order."""
    fraction = a_part(fields.fraction)
    value, parts = fraction.value, fraction.value.denominator
    counts = _counts(fields, context)
    if len(counts) // parts > 10 * context.caps.answers:
        message = f"Every {parts} counts have one that can be so shared, and that is too many."
        raise Unsolvable(("up_to",), message, "choose a smaller number.", "activity-too-many-answers")
    answers = []
    for id_, name, count in counts:
        if count % parts == 0:
            says = (
                f"{f'{name} has' if name else 'There are'} {count:,}: {spoken(value)} of {count:,} is {count * value}."
            )
            says = capital(says)
            data = {"count": count, "part": int(count * value)} | ({"player": id_} if id_ else {})
            answers.append(Answer(says, shared_out(Fraction(count), value, context), data))
    away = [count for _, _, count in counts if count % parts]
    note = f"A count can be so shared when it makes {parts} equal groups with none left over."
    if away:
        each, over = divmod(away[0], parts)
        note += f" {away[0]:,} cannot: {away[0]:,} ÷ {parts} = {each:,} remainder {over}."
    shown = "" if fields.fact or len(counts) > _COUNTS_SHOWN else ", ".join(f"{count:,}" for _, _, count in counts)
    to = f", up to {counts[-1][2]:,}" if not fields.fact and not shown else ""
    task = Task(
        f"{capital(spoken(value))} of each count{to}: which come out as a whole number?",
        context.characters if fields.fact else (),
        tuple(f"{count:,}" for _, _, count in counts) if fields.fact else (),
        (shown,) if shown else (),
    )
    wrong = next((count for count in away if count % 2 == 0), None)
    likely_error = (
        LikelyError("Takes any even number.", f"{wrong:,} as well, which cannot be so shared") if wrong else None
    )
    return solution(task, answers, context, 1 + (value.numerator > 1), note, likely_error, [parts])


def _counts(fields: FractionFields, context: Context) -> list[tuple[str, str, int]]:
    if fields.fact:
        values = whole_fact(context, fields.fact)
        return [(character.id, character.name, values[character.id]) for character in context.characters]
    if fields.counts:
        return [("", "", count) for count in sorted(set(fields.counts))]
    return [("", "", count) for count in range(1, min(fields.up_to or 0, context.caps.tries) + 1)]


def part_of_cast(fields: FractionFields, context: Context) -> Solution:
    """What fraction of the cast has a value of a fact: those who fit are counted, then all."""
    fact, wanted = fields.fact or "", True if fields.has is None else fields.has
    for character in context.characters:
        if fact not in character.facts:
            message = f'{character.name} has no fact "{fact}".'
            raise Unsolvable(("fact",), message, "give the character that fact.", "activity-fact-missing")
    fits = [character for character in context.characters if character.facts[fact] == wanted]
    about = context.facts.get(fact)
    label = about.means if about else fact
    if wanted is not True:
        value = written(wanted) if isinstance(wanted, int) else wanted
        label = f"not {label}" if wanted is False else f"{label}: {value}"
    among, all_ = len(fits), len(context.characters)
    what = "fraction" if context.year.year > 1 else "part"
    task = Task(f"What {what} of them fits this: {label}?", context.characters, lines=(f"___ of the {all_} fit.",))
    if not fits:
        return solution(task, [], context, 2, f"Nobody fits this: {label}.")
    told = WrittenNumber.over(among, all_)
    simplest = mixed(told.value)
    same = "" if simplest == told.text else f", and {told.text} = {simplest}"
    who = listed([character.name for character in fits])
    worked = (
        f"There are {all_} equal shares, one each, and {among} {'fits' if among == 1 else 'fit'}: {told.text}{same}."
    )
    says = f"{capital(who)}: {among} of the {all_}. That is {told.text} of them."
    data = {"players": [character.id for character in fits], "fraction": told.text, "simplest": simplest}
    note = "Each character either fits or does not, so there is one answer."
    likely_error = None
    if among < all_ - among or among > all_ - among > 0:
        likely_error = LikelyError(
            "Compares those who fit with those who do not.", f"{among}/{all_ - among} in place of {told.text}"
        )
    return solution(
        task, [Answer(says, worked, data)], context, 2 + bool(same), note, likely_error, (), bar(told, f"{all_}")
    )


def groups(fields: FractionFields, context: Context) -> Solution:
    """Who together have exactly this fraction of all there is: smallest groups first, then in the cast's order."""
    value = a_part(fields.fraction).value
    values = whole_fact(context, fields.fact or "")
    total = sum(values.values())
    wanted = total * value
    about = context.facts.get(fields.fact or "")
    things = fields.things or (about.unit if about else "")
    answers = []
    for size in range(1, len(context.characters) + 1):
        for group in combinations(context.characters, size):
            if sum(values[character.id] for character in group) == wanted:
                answers.append(_group([p.name for p in group], [p.id for p in group], values, value, total, context))
    if len(answers) > context.caps.answers:
        message = f"{len(answers):,} groups have {spoken(value)} of it all."
        raise Unsolvable(("fact",), message, "choose fewer characters.", "activity-too-many-answers")
    task = Task(
        f"There are {counted(total, things)} in all. Who together have exactly {spoken(value)} of them?",
        context.characters,
        tuple(f"{number:,}" for number in values.values()),
        (f"{value} of {total:,} = ___",),
    )
    note = f"Every group was tried, from one character to all {len(context.characters)}."
    if wanted.denominator > 1:
        note = f"{capital(spoken(value))} of {total:,} is {mixed(wanted)}, which whole numbers cannot make."
    elif not answers:
        note = f"No group makes {wanted.numerator:,}. {note}"
    half = len(context.characters) * value
    likely_error = None
    if half.denominator == 1 and answers and all(len(answer.data["players"]) != half for answer in answers):
        likely_error = LikelyError(
            f"Takes {spoken(value)} of the characters in place of what they have.", f"a group of {half}"
        )
    return solution(task, answers, context, 3, note, likely_error, [value.denominator])


def _group(
    names: list[str], ids: list[str], values: dict[str, int], value: Fraction, total: int, context: Context
) -> Answer:
    numbers = [values[id_] for id_ in ids]
    together = sum(numbers)
    chain = f"{' + '.join(f'{n:,}' for n in numbers)} = {together:,}. " if len(numbers) > 1 else ""
    says = f"{capital(listed(names))} {'have' if len(names) > 1 else 'has'} {spoken(value)} of them all: {together:,}."
    data = {"players": ids, "together": plain(Fraction(together))}
    return Answer(says, chain + shared_out(Fraction(total), value, context), data)
