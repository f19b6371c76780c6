"""Sharing in words: what is asked, each answer, why, how one knows that these are all, and the likely error."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from ...expression.noun import Noun
from ...model.activity import Context, LikelyError
from ...model.year import YearLimits
from ..saying import capital, counted, listed, owner, there_are, written
from ..sentences import write_calculation
from .calculation import MOST_COUNTED, count_all, count_in_steps, find_steps, shares_among
from .given import OwnedPile, piles_of, receivers_of, total_of
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


def things_of(task: ShareTask) -> Noun:
    """What is shared, as the author calls it."""
    return task.noun(task.things or (task.fact or "").replace("_", " "))


def says_equal(year: YearLimits) -> bool:
    """Whether the year says equal, and left over; a year that has not met = says fair, and left."""
    return year.knows("=")


def ask_for(task: ShareTask, found: Sequence[InGroups], context: Context) -> str:
    """What is asked."""
    year, things = context.year, things_of(task)
    any_left = " Are any left over?" if says_equal(year) else ""
    names = [character.name for character in receivers_of(task, context)]
    match task:
        case EachTask():
            [one] = found
            between = listed(names) if names else written(one.groups)
            equally = _equally(year)
            return f"Share {counted(count_all(one), things)} {equally} between {between}. How many does each get?{any_left}"
        case GroupsTask():
            total = counted(total_of(task, context), things)
            return f"Put {total} in groups of {written(task.each)}. How many groups are there?{any_left}"
        case TotalTask():
            [one] = found
            holders = f"{capital(listed(names))} have" if names else f"{there_are(one.groups, 'groups')} with"
            return f"{holders} {counted(task.each, things)} each. How many are there altogether?"
        case PartsTask():
            total = counted(total_of(task, context), things)
            return f"They share {total}. {_ratio(task, names)} How many does each get?{any_left}"
        case WaysTask():
            return _ask_for_ways(task, counted(total_of(task, context), things), year)
        case _:
            return _ask_for_piles(task, piles_of(task, context), year)


def _equally(year: YearLimits) -> str:
    return "equally" if says_equal(year) else "fairly"


def _ask_for_ways(task: WaysTask, amount: str, year: YearLimits) -> str:
    left = f" so that {_left(task.left_over, year)}" if task.left_over else ""
    within = f" Make at least {task.fewest:,} groups." if task.fewest > 1 else ""
    if task.most:
        many = counted(task.most, "groups")
        within = f" Make {many}." if task.fewest == task.most else f" Make from {task.fewest:,} to {many}."
    groups = "equal groups" if says_equal(year) else "groups of the same size"
    return f"Put {amount} in {groups}{left}. Find every way.{within}"


def _ask_for_piles(task: PilesTask | CastPilesTask, piles: Sequence[OwnedPile], year: YearLimits) -> str:
    way = f"put in groups of {written(task.by)}"
    if task.among:
        way = f"shared {_equally(year)} between {written(task.among)}"
    if task.left_over:
        way += f", with {written(task.left_over)} left{' over' if says_equal(year) else ''}"
    if isinstance(task, CastPilesTask):
        return f"Whose {things_of(task)} can be {way}?"
    return f"Which of these can be {way}: {listed([written(pile) for pile, _ in piles], 'or')}?"


def _ratio(task: PartsTask, names: Sequence[str]) -> str:
    parts = tuple(task.parts.values())
    if len(parts) == 2 and min(parts) == 1 and max(parts) > 1:
        more, less = names if parts[0] > 1 else reversed(names)
        times = "twice" if max(parts) == 2 else f"{max(parts)} times"
        return f"{capital(more)} gets {times} as many as {less}."
    gets = [f"{name} gets {counted(part, 'parts')}" for name, part in zip(names, parts, strict=True)]
    return f"{capital(listed(gets))}."


def _left(left: int, year: YearLimits) -> str:
    return f"{written(left)} {'is' if left == 1 else 'are'} left{' over' if says_equal(year) else ''}"


def say_answer(task: ShareTask, value: ShareAnswer, context: Context) -> str:
    """The answer as a person says it."""
    names = {character.id: character.name for character in context.characters}
    rest = f", and {_left(value.left, context.year)}" if value.left else ""
    return _say_shares(value, things_of(task), names) + rest


def _say_shares(value: ShareAnswer, things: str, names: Mapping[str, str]) -> str:
    if isinstance(value, Parts):
        return capital(listed([f"{names[id_]} gets {written(share)}" for id_, share in value.gets.items()]))
    groups = f"{counted(value.groups, 'groups')} of {written(value.each)}"
    match value:
        case Shares():
            share = f"{counted(value.each, things)} each"
            return f"{capital(listed([names[id_] for id_ in value.gets]))} get {share}" if value.gets else share
        case Together():
            if _is_double(value, things):
                return f"Double {written(value.each)} is {written(value.total)}"
            return f"{groups} {'makes' if value.groups == 1 else 'make'} {counted(value.total, things)}"
        case Pile():
            pile = counted(value.pile, things if value.who else "")
            return f"{capital(owner(names[value.who])) + ' ' if value.who else ''}{pile}: {groups}"
        case Groups():
            return groups


def _is_double(value: ShareAnswer, things: str) -> bool:
    return isinstance(value, Together) and value.groups == 2 and not things


def explain(task: ShareTask, one: InGroups, year: YearLimits) -> str:
    """One line of reasoning: calculations where the year writes them, else counting in find_steps, else dealing out."""
    return f"{_reasoning(task, one, year)}."


def _reasoning(task: ShareTask, one: InGroups, year: YearLimits) -> str:
    if not year.knows("+"):
        return _dealing(task, one)
    if not one.each:
        return f"{written(count_all(one))} {'is' if count_all(one) == 1 else 'are'} too few for {written(one.groups)}"
    rest = f", and {one.left} more" if one.left and not year.knows("×") else ""
    if calculations := [write_calculation(step) for step in find_steps(task, one, year)]:
        return "; ".join(calculations) + rest
    aloud = [written(number) for number in count_in_steps(one, year)]
    if one.groups <= MOST_COUNTED:
        return f"Count: {', '.join(aloud)}{rest}"
    return f"Count in steps of {aloud[0]} to {aloud[-1]}{rest}"


def _dealing(task: ShareTask, one: InGroups) -> str:
    if isinstance(task, TotalTask):
        return f"Put out {counted(one.groups, 'groups')} of {written(one.each)} and count them all"
    if shares_among(task):
        end = "too few are left for everyone" if one.left else "none is left"
        return f"Deal them out one at a time, round and round, until {end}"
    return f"Make groups of {written(one.each)} until there are too few for another, and count the groups"


def explain_all(task: ShareTask, found: Sequence[InGroups], context: Context) -> str:
    """How one knows that these are all, or why there is none."""
    match task:
        case TotalTask():
            return "Equal groups make one total."
        case WaysTask():
            return _explain_all_ways(task, found, context)
        case PilesTask() | CastPilesTask():
            out = {count_all(one) for one in found}
            rest = dict.fromkeys(pile for pile, _ in piles_of(task, context) if pile not in out)
            leave = listed([f"{written(pile)} leaves {written(pile % task.by)}" for pile in rest])
            if not leave:
                return "All of them can be." if len(found) > 1 else "Nothing is left, so all of it is shared."
            return f"Of the others, {leave}." if found else f"{leave}."
        case _:
            [one] = found
            if not one.left:
                return "Nothing is left, so all of it is shared."
            more = "for another group" if isinstance(task, GroupsTask) else "to share again"
            return f"{capital(_left(one.left, context.year))}: too few {more}."


def _explain_all_ways(task: WaysTask, found: Sequence[InGroups], context: Context) -> str:
    if not found:
        if task.fewest == 1 and task.most is None:
            return "Every size of group was tried, and each leaves another number over."
        most = total_of(task, context) if task.most is None else task.most
        return f"Every number of groups from {written(task.fewest)} to {written(most)} was tried, and none comes out."
    pair = _turned_pair(found)
    note = "Every number of groups was tried in turn; only these come out."
    return f"{note} They come in pairs: {pair}." if pair else note


def _turned_pair(found: Sequence[InGroups]) -> str:
    """``2 groups of 5 and 5 groups of 2``, where two ways are so; else nothing."""
    both = {(one.groups, one.each) for one in found}
    swapped = [one for one in found if (one.each, one.groups) in both and one.groups < one.each]
    a, b = (swapped[0].groups, swapped[0].each) if swapped else (0, 0)
    return f"{counted(a, 'groups')} of {written(b)} and {counted(b, 'groups')} of {written(a)}" if swapped else ""


def find_error(task: ShareTask, found: Sequence[InGroups], context: Context) -> LikelyError | None:
    """The likely error, worked out; None where none would show."""
    if not found:
        return None
    one = found[0]
    match task:
        case TotalTask():
            added = f"{written(one.groups + one.each)}."
            return LikelyError("Adds the two numbers.", added) if count_all(one) > 4 else None
        case EachTask() if one.left and one.each:
            gives = f"{written(one.each + 1)} for some, {written(one.each)} for others."
            return LikelyError("Deals out what is left over as well.", gives)
        case GroupsTask() if one.left:
            return LikelyError("Counts what is left over as a group.", f"{written(one.groups + 1)} groups.")
        case EachTask() | GroupsTask() if one.each == one.groups:
            return None
        case EachTask():
            return LikelyError("Says how many share, and not how many each has.", f"{written(one.groups)}.")
        case GroupsTask():
            return LikelyError("Says how many are in a group, and not how many groups.", f"{written(one.each)}.")
        case PartsTask():
            share = count_all(one) // len(task.parts)
            different = len(set(task.parts.values())) > 1
            return LikelyError("Shares equally.", f"{written(share)} each.") if different else None
        case WaysTask():
            pairs = len({frozenset((way.groups, way.each)) for way in found})
            gives = f"{pairs} instead of {len(found)}."
            return LikelyError(f"Counts {_turned_pair(found)} as one way.", gives) if pairs < len(found) else None
        case _:
            return _error_by_a_digit(task, one, piles_of(task, context))


def _error_by_a_digit(task: PilesTask | CastPilesTask, one: InGroups, piles: Sequence[OwnedPile]) -> LikelyError | None:
    """Piles between two: an odd number with an even digit at its front is taken to be even."""
    if one.groups != 2 or one.left:
        return None
    odd = (pile for pile, _ in piles if pile % 2 and pile > 9 and int(str(pile)[0]) % 2 == 0)
    taken = next(odd, None)
    return None if taken is None else LikelyError("Goes by the first digit.", f"{written(taken)} as well.")


def find_words(task: ShareTask, values: Sequence[ShareAnswer], year: YearLimits) -> Iterator[str]:
    """The words of the word bank that the task is asked and answered in."""
    equal = says_equal(year)
    match task:
        case EachTask() | PartsTask():
            yield from ("share", "each", *(("left over",) if equal else ()))
        case GroupsTask():
            yield from ("group", *(("left over",) if equal else ()))
        case TotalTask():
            yield from ("group", "each", "altogether")
            yield from ("double" for value in values if _is_double(value, things_of(task)))
        case WaysTask():
            yield "equal groups" if equal else "group"
        case _:
            yield from ("share", "group") if task.among else ("group",)
    if isinstance(task, (WaysTask, PilesTask, CastPilesTask)) and task.left_over and equal:
        yield "left over"
