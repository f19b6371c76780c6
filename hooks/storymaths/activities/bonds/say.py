"""Bonds in words: what is asked, each way, how one knows that these are all, and the likely error."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from math import comb

from ...model.activity import Context, LikelyError
from ...model.year import YearLimits
from ..kind import whole_fact
from ..saying import capital, counted, listed, number_word, there_are, written
from ..sentences import write_calculation
from .given import (
    count_missing,
    find_step,
    holders_of,
    known_of,
    order_counts,
    pickers_of,
    split_of,
    whole_of,
)
from .split import orders_of
from .tasks import Bond, BondsTask, CastTask, MissingTask, SplitTask, WholeTask

_MOST_LISTED = 8


def says_whole(year: YearLimits) -> bool:
    """Whether the year speaks of a whole; one that has met no signs asks how many there are altogether."""
    return year.knows("=")


def writes_sums(year: YearLimits) -> bool:
    """Whether children write what makes the whole with + and =."""
    return year.knows("+") and year.knows("=")


def ask_for(task: BondsTask, context: Context) -> str:
    """What is asked."""
    formal = says_whole(context.year)
    whole = counted(whole_of(task, context), task.noun(task.things))
    match task:
        case WholeTask():
            end = "What is the whole?" if formal else "How many are there altogether?"
            return f"The parts are {listed([written(part) for part in task.known])}. {end}"
        case CastTask():
            return f"Which {number_word(task.parts)} make {whole} together? Find every way."
        case MissingTask():
            start = f"The whole is {whole}." if formal else f"There are {whole} altogether."
            return f"{start} {_ask_for_missing(task, count_missing(task, context))}{_say_limits(task)}"
        case SplitTask():
            if names := [holder.name for holder in holders_of(task, context)]:
                return f"Share {whole} between {listed(names)}. Find every way.{_say_limits(task)}"
            swaps = " The same parts in another order are another way." if task.order == "counts" else ""
            return f"Make {whole} from {number_word(task.parts)} parts. Find every way.{_say_limits(task)}{swaps}"


def _ask_for_missing(task: MissingTask, missing: int) -> str:
    known = listed([written(part) for part in task.known])
    start = f"One part is {known}." if len(task.known) == 1 else f"Parts are {known}."
    if missing == 1:
        return f"{start} What is the other part?"
    return f"{start} What can the other {number_word(missing)} parts be? Find every way."


def _say_limits(task: SplitTask | MissingTask) -> str:
    limits = []
    if task.step > 1:
        limits.append(f"Count in steps of {written(task.step)}.")
    if task.smallest > 0:
        limits.append(f"Each part is {written(task.smallest)} or more.")
    if task.largest is not None:
        limits.append(f"No part is more than {written(task.largest)}.")
    if task.different:
        limits.append("No two parts are the same.")
    return "".join(f" {limit}" for limit in limits)


def say_bond(task: BondsTask, bond: Bond, context: Context) -> str:
    """A way as a person says it."""
    if bond.who is None:
        return _say_parts(bond)
    known = {character.id: character.name for character in context.characters}
    names = [known[id_] for id_ in bond.who]
    if isinstance(task, CastTask):
        return f"{capital(listed(names))} make {written(bond.whole)}"
    held = zip(names, bond.parts, strict=True)
    return capital(listed([f"{name} has {counted(part, task.noun(task.things))}" for name, part in held]))


def _say_parts(bond: Bond) -> str:
    return f"{listed([written(part) for part in bond.parts])} make {written(bond.whole)}"


def explain(task: BondsTask, bond: Bond, year: YearLimits) -> str:
    """A calculation where the year writes them."""
    return f"{write_calculation(find_step(task, bond, year)) if writes_sums(year) else _say_parts(bond)}."


def explain_all(task: BondsTask, bonds: Sequence[Bond], context: Context) -> str:
    """How one knows that these are all, or why there is none."""
    match task:
        case CastTask():
            groups = "pairs" if task.parts == 2 else f"groups of {number_word(task.parts)}"
            tries = there_are(comb(len(pickers_of(task, context)), task.parts), groups)
            return f"{tries} to try, and {_count(len(bonds))}."
        case WholeTask():
            return "The parts make one whole."
        case _ if not bonds:
            return _explain_none(task, context)
        case _ if count_missing(task, context) == 1:
            return "Take what is known from the whole: one number is left."
        case _:
            return _explain_ways(task, bonds, context)


def _explain_ways(task: SplitTask | MissingTask, bonds: Sequence[Bond], context: Context) -> str:
    firsts = Counter(bond.parts[len(known_of(task))] for bond in bonds)
    low, high = written(min(firsts)), written(max(firsts))
    by = f" in steps of {written(task.step)}" if task.step > 1 else " one at a time"
    goes_up = f"The first part goes up{by} from {low} to {high}"
    if set(firsts.values()) == {1}:
        if low == high:
            return f"The first part can only be {low}."
        jumped = [first for first in range(min(firsts), max(firsts), task.step) if first not in firsts]
        if jumped:
            are = "is" if len(jumped) == 1 else "are"
            return f"{goes_up}. Only {listed(list(map(written, jumped)))} {are} left out: two parts would be the same."
        swapped = not order_counts(task, context) and count_missing(task, context) == 2
        end = "After that the same parts come again, swapped." if swapped else "No step is left out."
        return f"{goes_up}. {end}"
    if len(firsts) > _MOST_LISTED:
        return f"{goes_up}, and for each the second does; {_count(len(bonds))}."
    ways = [f"with {written(first)} first, {counted(count, 'ways')}" for first, count in sorted(firsts.items())]
    total = " + ".join(str(count) for _, count in sorted(firsts.items()))
    return f"{capital('; '.join(ways))}{f'. Altogether {total} = {len(bonds)}' if len(ways) > 1 else ''}."


def _count(found: int) -> str:
    return {0: "none fits", 1: "1 fits"}.get(found, f"{found} fit")


def _explain_none(task: SplitTask | MissingTask, context: Context) -> str:
    rest, split = task.whole - sum(known_of(task)), split_of(task, context)
    if rest % split.step:
        return f"Counting in steps of {written(split.step)} never comes to {written(rest)}."
    least, most = split.smallest_whole(), max(0, split.largest_whole())
    if least > rest:
        return f"Even the smallest parts make {written(least)}, which is more than {written(rest)}."
    if most < rest:
        return f"Even the largest parts make {written(most)}, which is less than {written(rest)}."
    return "The parts that would make it are the same as one that is known."


def find_error(task: BondsTask, bonds: Sequence[Bond], context: Context) -> LikelyError | None:
    """The likely error, counted out; None where none would show."""
    ways = len(bonds)
    match task:
        case _ if not bonds:
            return None
        case WholeTask(known=(one, other)):
            apart = abs(one - other)
            return LikelyError("Takes one part from the other.", f"{written(apart)}.") if apart < one + other else None
        case CastTask():
            return _error_of_cast(task, ways, context)
        case MissingTask() if count_missing(task, context) == 1:
            added = f"{written(task.whole + sum(task.known))}."
            return LikelyError("Adds what is known to the whole.", added) if sum(task.known) else None
        case _ if order_counts(task, context):
            fewer = len({tuple(sorted(bond.parts)) for bond in bonds})
            does = "Counts the same parts the other way round as one way."
            return LikelyError(does, f"{fewer} instead of {ways}.") if fewer < ways else None
        case _:
            more = sum(len(orders_of(bond.parts[len(known_of(task)) :])) for bond in bonds)
            does = "Counts the same parts the other way round as another way."
            return LikelyError(does, f"{more} instead of {ways}.") if more > ways else None


def _error_of_cast(task: CastTask, ways: int, context: Context) -> LikelyError | None:
    values, whole = whole_fact(context, task.fact), whole_of(task, context)
    twice = [picker.name for picker in pickers_of(task, context) if 2 * values[picker.id] == whole]
    if task.parts == 2 and twice:
        return LikelyError("Takes the same character twice.", f"{capital(twice[0])} and {twice[0]}.")
    return LikelyError("Stops at the first way.", f"1 instead of {ways}.") if ways > 1 else None


def find_words(task: BondsTask, context: Context) -> Iterator[str]:
    """The words of the word bank that the task is asked in."""
    whole = "whole" if says_whole(context.year) else "altogether"
    match task:
        case WholeTask() | MissingTask():
            yield from ("part", whole)
        case SplitTask():
            yield "share" if holders_of(task, context) else "part"
