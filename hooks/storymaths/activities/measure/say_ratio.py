"""Amounts in step and in a ratio, in words."""

from __future__ import annotations

from collections.abc import Sequence

from ...model.activity import LikelyError
from ...model.quantity import UNITS
from ...model.year import YearLimits
from ..saying import capital, listed
from .amount import Amount, tell, tell_as_given
from .sums import Sentence, write_sentences
from .tasks import KeepInStep, ShareInRatio


def ask_for_rate(task: KeepInStep, year: YearLimits) -> str:
    """What is known, and what is wanted."""
    of, comes_to, want = (tell_as_given(amount, year) for amount in (task.of, task.comes_to, task.want))
    do = "does" if _is_one(task.want) else "do"
    return f"{capital(of)} {_come(task.of)} to {comes_to}. What {do} {want} come to?"


def say_rate(task: KeepInStep, found: Amount, year: YearLimits) -> str:
    """``3 blocks come to 12 cm``."""
    return f"{capital(tell_as_given(task.want, year))} {_come(task.want)} to {tell(found, year)}"


def _come(amount: Amount) -> str:
    return "comes" if _is_one(amount) else "come"


def _is_one(amount: Amount) -> bool:
    return amount.number == 1 or amount.unit in UNITS


def explain_rate(sentences: Sequence[Sentence], found: Amount, year: YearLimits) -> str:
    """Down to one part, then up to as many."""
    if sentences:
        return write_sentences(sentences, year)
    return f"It is the same amount, so the same {tell(found, year)}."


def expect_adding(wrong: Amount, year: YearLimits) -> LikelyError:
    """Adding to both alike."""
    return LikelyError("Adds the same to both instead of keeping them in step.", tell(wrong, year))


def ask_for_parts(task: ShareInRatio, year: YearLimits) -> str:
    """The whole and its ratio."""
    whole = capital(tell_as_given(task.total, year))
    return f"{whole} is made of {len(task.ratio)} parts. {_tell_ratio(task)} How much is each part?"


def _tell_ratio(task: ShareInRatio) -> str:
    ratio = task.ratio
    if task.times:
        first, second = ("first", "second") if ratio[0] > 1 else ("second", "first")
        return f"The {first} is {task.times} times the {second}."
    places = listed([f"{count} in part {place}" for place, count in enumerate(ratio, 1)])
    return f"Of every {sum(ratio)} there {'is' if ratio[0] == 1 else 'are'} {places}."


def say_parts(each: Sequence[Amount], year: YearLimits) -> str:
    """``150 g and 450 g``."""
    return capital(listed([tell(amount, year) for amount in each]))


def expect_equal_parts(each: Amount, year: YearLimits) -> LikelyError:
    """Sharing equally."""
    return LikelyError("Shares it equally.", f"{tell(each, year)} for each")
