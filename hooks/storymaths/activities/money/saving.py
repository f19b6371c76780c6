"""Money shared, and money saved week by week."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from ...model.activity import Answer, Context, LikelyError, Solution, Task
from ..kind import Unsolvable
from ..saying import capital, counted, listed, number_word, spoken
from .amount import adding, brief, told, writer
from .bill import LOTS, bought, solution, sorts, taking, times

if TYPE_CHECKING:
    from . import MoneyFields


def share(fields: MoneyFields, context: Context) -> Solution:
    """What each gets, or what a part comes to, when some is taken off first and some from the share."""
    part = Fraction(1, fields.among) if fields.among else fields.fraction or Fraction(1)
    amounts, sentences = bought(fields, context)
    all_, less, each_less = sum(amounts), sum(fields.less), sum(fields.each_less)
    left, got = all_ - less, (all_ - less) * part
    loc = ("among",) if fields.among else ("fraction",)
    if not 0 < part <= 1:
        raise Unsolvable(loc, "More than all of it cannot be given.", "write a fraction no more than 1.")
    if left <= 0 or got < each_less:
        raise Unsolvable(loc, "More would be taken off than there is.", "take off less.")
    if got.denominator > 1:
        message = f"{capital(told(left, context.year))} does not share out in whole pence."
        raise Unsolvable(loc, message, "change the amount, or share it otherwise.")
    if len(amounts) > 1:
        sentences.append(adding(amounts, all_, context.year))
    if less:
        sentences.append(taking(all_, fields.less, left, context))
    sentences += _parts(left, part, context)
    final = int(got) - each_less
    if each_less:
        sentences.append(taking(int(got), fields.each_less, final, context))
    likely_error = None
    if less and (all_ * part).denominator == 1:
        likely_error = LikelyError("Shares before anything is taken off.", told(int(all_ * part), context.year))
    who = "Each has" if fields.among else "It is"
    worked = ". ".join(sentences or ["All of it is given"]) + "."
    answer = Answer(f"{who} {told(final, context.year)}.", worked, {"share": final})
    task = Task(_shared_how(fields, part, context))
    note = "Equal shares come out one way, so there is one answer."
    tables = [part.denominator] if 1 < part.denominator <= 12 and context.year.year >= 2 else []
    return solution(task, [answer], len(sentences), note, likely_error, tables)


def _parts(left: int, part: Fraction, context: Context) -> list[str]:
    one, over, under = left // part.denominator, part.numerator, part.denominator
    write = writer([left, one, one * over], context.year)
    sentences = [f"{write(left)} ÷ {under} = {write(one)}"] if under > 1 else []
    return sentences + ([f"{over} × {write(one)} = {write(one * over)}"] if over > 1 else [])


def _shared_how(fields: MoneyFields, part: Fraction, context: Context) -> str:
    year = context.year
    off = f" {capital(listed([brief(n, year) for n in fields.less]))} is taken off first." if fields.less else ""
    among = (
        f"It is shared among {number_word(fields.among)}."
        if fields.among
        else f"{capital(spoken(part))} of it is given."
    )
    taken = [brief(worth, year) for worth in fields.each_less]
    then = f" Then {listed(taken)} {'are' if len(taken) > 1 else 'is'} taken from each share." if taken else ""
    asked = "How much does each have in the end?" if fields.among else "How much is that?"
    return f"The money is {listed(sorts(fields, context, LOTS))}.{off} {among}{then} {asked}"


def save(fields: MoneyFields, context: Context) -> Solution:
    """How many weeks until an amount is saved: the first weeks as told, then as many as it takes."""
    year, target, each = context.year, fields.amount or 1, fields.each or 1
    parts, sentences = bought(fields, context)
    saved, weeks = sum(parts), sum(count for count, _ in fields.items)
    left = target - saved
    if left < 0:
        message = f"{capital(told(saved, year))} is already more than {told(target, year)}."
        raise Unsolvable(("amount",), message, "save for something dearer.")
    if len(parts) > 1:
        sentences.append(adding(parts, saved, year))
    if saved:
        sentences.append(taking(target, [saved], left, context))
    more = -(-left // each)
    if more:
        sentences.append(times(more, each, context))
        if more * each > left and more > 1:
            sentences.append(f"{times(more - 1, each, context)} is not yet enough")
    if weeks and more:
        sentences.append(f"{weeks:,} + {more:,} = {weeks + more:,}")
    likely_error = LikelyError("Leaves out the first weeks.", counted(more, "weeks")) if weeks and more else None
    total = weeks + more
    answer = Answer(f"It takes {counted(total, 'weeks')}.", ". ".join(sentences) + ".", {"weeks": total})
    task = Task(_saved_how(fields, context))
    return solution(task, [answer], len(sentences), "A week fewer would not be enough.", likely_error)


def _saved_how(fields: MoneyFields, context: Context) -> str:
    year = context.year
    start = f" {capital(told(fields.start, year))} is there already." if fields.start else ""
    first = [f"{told(n, year)} a week for {counted(count, 'weeks')}" for count, n in fields.items]
    then = f"{told(fields.each or 1, year)} a week"
    how = f"First it is {listed(first, 'then')}, and after that {then}" if first else f"{capital(then)} is saved"
    return f"The aim is {told(fields.amount or 1, year)}.{start} {how}. How many weeks does it take?"
