"""Fractions of sets, in words: what is asked, each answer, why, how one knows, and the likely error."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from ...model.activity import CastMember, Context, LikelyError
from ...model.year import YearLimits
from ..saying import capital, listed, mixed, spoken, there_are, written
from .answers import Group, PartOfCast, SharedCount
from .say_amounts import explain_part
from .tasks import GroupsTask, SetTask

NOTE_ON_SETS = "Each character fits or does not."


def ask_for_counts(fraction: Fraction, up_to: int | None) -> str:
    """Which counts come out whole; ``up_to`` is the last of those that are not listed."""
    to = f", up to {up_to:,}" if up_to else ""
    return f"Find {spoken(fraction)} of each number{to}. Which come out as a whole number?"


def say_count(one: SharedCount, fraction: Fraction, name: str) -> str:
    """``Gull has 8: a quarter of 8 is 2``."""
    has = f"{name} has" if name else f"There {'is' if one.count == 1 else 'are'}"
    return capital(f"{has} {one.count:,}: {spoken(fraction)} of {one.count:,} is {one.part}")


def note_on_counts(parts: int, away: Sequence[int], year: YearLimits) -> str:
    """When a count can be shared, and the first that cannot."""
    note = f"It comes out when the number makes {parts} equal groups with none left over."
    first = next((count for count in away if count > parts), None)
    if first is None:
        return note
    each, over = divmod(first, parts)
    if not year.knows("÷"):
        return f"{note} {first:,} cannot: {parts} equal groups of {each:,} leave {over} over."
    return f"{note} {first:,} cannot: {first:,} ÷ {parts} = {each:,} remainder {over}."


def expect_error_in_counts(away: Sequence[int], parts: int) -> LikelyError | None:
    """Taking any even number, where all that come out are even."""
    wrong = next((count for count in away if count % 2 == 0), None)
    if wrong is None or parts % 2:
        return None
    return LikelyError("Takes any even number.", f"{wrong:,} as well, which does not come out.")


def label_of(task: SetTask, context: Context) -> str:
    """What counts as fitting."""
    about = context.facts.get(task.fact)
    label = about.means if about else task.fact
    if task.has is None or task.has is True:
        return label
    if task.has is False:
        return f"not {label}"
    return f"{label}: {written(task.has) if isinstance(task.has, int) else task.has}"


def name_fraction(year: YearLimits) -> str:
    """The word that the year has for it."""
    return "fraction" if year.practice.fraction.names_fraction else "part"


def ask_for_part_of_cast(task: SetTask, context: Context) -> str:
    """What fraction of them fits."""
    return f"What {name_fraction(context.year)} of them fits this: {label_of(task, context)}?"


def say_part_of_cast(fits: Sequence[CastMember], all_: int, found: PartOfCast) -> str:
    """``Gull and crab: 2 of the 4. That is 2/4 of them``."""
    who = capital(listed([character.name for character in fits]))
    return f"{who}: {len(fits)} of the {all_}. That is {found.fraction.text} of them"


def explain_part_of_cast(among: int, all_: int, found: PartOfCast) -> str:
    """The shares, those of them that fit, and the simplest form."""
    told, simplest = found.fraction.text, found.simplest.text
    same = "" if simplest == told else f", and {told} = {simplest}"
    return f"There are {all_} equal shares, one each, and {among} {'fits' if among == 1 else 'fit'}: {told}{same}."


def expect_error_in_set(among: int, all_: int) -> LikelyError | None:
    """Comparing with the others in place of with all."""
    others = all_ - among
    if not others or among == others:
        return None
    return LikelyError("Compares those who fit with those who do not.", f"{among}/{others} instead of {among}/{all_}")


def ask_for_groups(total: int, fraction: Fraction, things: str) -> str:
    """How many there are, and which part of them."""
    there = f"{there_are(total, things)} in all."
    return f"{there} Who together have exactly {spoken(fraction)} of them?"


def say_group(names: Sequence[str], fraction: Fraction, together: int) -> str:
    """``Gull and crab have half of them all: 12``."""
    return (
        f"{capital(listed(names))} {'have' if len(names) > 1 else 'has'} {spoken(fraction)} of them all: {together:,}"
    )


def explain_group(numbers: Sequence[int], total: int, fraction: Fraction, year: YearLimits) -> str:
    """What they have put together, and the part it is."""
    chain = f"{' + '.join(f'{n:,}' for n in numbers)} = {sum(numbers):,}. " if len(numbers) > 1 else ""
    return chain + explain_part(Fraction(total), fraction, year)


def note_on_groups(task: GroupsTask, total: int, found: bool, context: Context) -> str:
    """That every group was tried, or why none can be."""
    wanted = total * task.fraction.value
    if wanted.denominator > 1:
        part = f"{capital(spoken(task.fraction.value))} of {total:,}"
        return f"{part} is {mixed(wanted)}, which whole numbers cannot make."
    note = f"Every group was tried, from one character to all {len(context.characters)}."
    return note if found else f"No group makes {wanted.numerator:,}. {note}"


def expect_error_in_groups(fraction: Fraction, groups: Sequence[Group], context: Context) -> LikelyError | None:
    """Taking the fraction of the characters, where that is never right."""
    half = len(context.characters) * fraction
    if half.denominator > 1 or not groups or any(len(group.characters) == half for group in groups):
        return None
    return LikelyError(f"Takes {spoken(fraction)} of the characters instead of what they have.", f"a group of {half}")
