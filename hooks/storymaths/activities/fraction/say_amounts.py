"""Fractions of an amount, in words: what is asked, each answer, why, and the likely error."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from ...expression.noun import Noun, noun_of
from ...model.activity import Context, LikelyError
from ...model.demands import Operation
from ...model.year import YearLimits
from ..saying import alike, capital, counted, owner, part_name, spoken, there_are
from ..sentences import write_calculation
from .answers import Rest, Whole
from .calculation import find_part
from .demands import places_beside
from .tasks import PartTask, RestTask, WholeTask

NOTE_ON_PARTS = "Equal parts are all the same size, so each amount has one answer."
NOTE_ON_RESTS = "Take away each part that goes."
NOTE_ON_WHOLES = "Find one equal part; the whole is all of them."


def explain_part(amount: Fraction, fraction: Fraction, year: YearLimits) -> str:
    """Sentences that find a part."""
    parts, places = fraction.denominator, places_beside(amount)
    if parts == 1:
        return f"All of {alike(amount, amount)} is {alike(amount, amount)}."
    shared, *taken = find_part(amount, fraction, year)
    one = f", so one {part_name(parts, 1)} is {alike(amount / parts, amount)}" if shared.sign == "+" else ""
    told = [write_calculation(shared, places) + one, *(write_calculation(step, places) for step in taken)]
    return ". ".join(told) + "."


def things_of(task: PartTask, context: Context) -> Noun:
    """What is counted, as the author or the fact calls it."""
    about = context.facts.get(task.fact) if task.fact else None
    return task.noun(task.things) if task.things else noun_of(about)


def ask_for_part(task: PartTask, amounts: Sequence[Fraction], things: str) -> str:
    """What part of what."""
    of = counted(amounts[0], things) if len(amounts) == 1 else "each amount"
    return f"What is {spoken(task.fraction.value)} of {of}?"


def say_part(amount: Fraction, fraction: Fraction, name: str, things: str) -> str:
    """``Half of Gull’s 8 shells is 4``."""
    whose = f"{owner(name)} " if name else ""
    return f"{capital(spoken(fraction))} of {whose}{counted(amount, things)} is {alike(amount * fraction, amount)}"


def expect_error_in_part(amount: Fraction, fraction: Fraction) -> LikelyError | None:
    """Stopping after one part, halving once, taking away."""
    over, parts = fraction.as_integer_ratio()
    if parts > 1 and over > 1:
        return LikelyError(f"Finds one {part_name(parts, 1)} and stops.", alike(amount / parts, amount))
    if parts == 4:
        return LikelyError("Halves once instead of twice.", alike(amount / 2, amount))
    if 1 < parts < amount:
        return LikelyError(f"Takes {parts} away instead of sharing into {parts}.", alike(amount - parts, amount))
    return None


def ask_for_rest(task: RestTask) -> str:
    """How many there are, which part goes, and how many more."""
    then = "".join(f" Then {alike(more, task.of, *task.taken)} more go." for more in task.taken)
    there = f"{there_are(task.of, task.noun(task.things))}."
    return f"{there} {capital(spoken(task.fraction.value))} of them go.{then} How many are left?"


def say_rest(task: RestTask, rest: Rest) -> str:
    """``6 animals left``."""
    return f"{capital(counted(rest.left, task.noun(task.things)))} left"


def explain_rest(task: RestTask, taking: Operation, places: int, year: YearLimits) -> str:
    """The part, then what is taken away."""
    return f"{explain_part(task.of, task.fraction.value, year)} {write_calculation(taking, places)}."


def expect_error_in_rest(task: RestTask, rest: Rest) -> LikelyError | None:
    """Stopping early, where that is wrong."""
    if rest.gone == rest.left:
        return None
    return LikelyError("Stops at the part that went.", alike(rest.gone, task.of, *task.taken))


def refuse_rest(task: RestTask, left: Fraction) -> tuple[str, str]:
    """That it cannot all go, or that nothing goes, and what to do."""
    message = f"More would go than the {alike(task.of, task.of)} there are." if left < 0 else "Nothing would go."
    return message, "take away numbers that are more than 0 and leave something."


def ask_for_whole(task: WholeTask, known: Fraction, share: Fraction) -> str:
    """What is known of the whole."""
    amount = counted(known, task.noun(task.things))
    told = (
        f"{capital(spoken(share))} of the whole is {amount}."
        if task.part is not None
        else f"{capital(spoken(task.fraction.value))} of them go one way and the other {amount} go another."
    )
    return f"{told} How many are there in all?"


def say_whole(task: WholeTask, whole: Whole) -> str:
    """``There are 28 shells in all``."""
    return f"{there_are(whole.whole, task.noun(task.things))} in all"


def explain_whole(known: Fraction, share: Fraction, steps: Sequence[Operation]) -> str:
    """What is known, one part of it, and all of them."""
    told = [f"{alike(known, known)} is {spoken(share)} of the whole"]
    return ". ".join((*told, *(write_calculation(step, places_beside(known)) for step in steps))) + "."


def expect_error_in_whole(known: Fraction, share: Fraction) -> LikelyError | None:
    """Taking a part of the part, where the whole is more."""
    if share == 1:
        return None
    return LikelyError("Takes the fraction of the number that is given.", alike(known * share, known))
