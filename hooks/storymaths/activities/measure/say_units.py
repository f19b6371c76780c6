"""Units laid end to end, and the volume of a cuboid, in words."""

from __future__ import annotations

from collections.abc import Sequence

from ...expression.noun import with_article
from ...model.activity import LikelyError, Line
from ...model.year import YearLimits
from ..saying import capital, listed
from .amount import Amount, bare, tell, tell_as_given
from .sums import Sentence, write_sentences
from .tasks import CountUnits, FindVolume


def ask_for_counts(task: CountUnits, year: YearLimits) -> str:
    """How long each unit is, and what is to be measured."""
    sizes = listed([f"{with_article(name)} is {tell_as_given(one, year)}" for name, one in task.by.items()])
    return f"{capital(sizes)}. How many of each make {tell_as_given(task.amount, year)}?"


def leave_gap(name: str) -> Line:
    """``shell: ___``."""
    return Line((f"{name}: ", ""))


def say_count(name: str, count: int, left: Amount, year: YearLimits) -> str:
    """``Shell: 4 of them, with 2 cm left``."""
    rest = f", with {tell(left, year)} left" if left.number else ""
    return f"{capital(name)}: {count:,} of them{rest}"


def explain_count(sentences: Sequence[Sentence], total: Amount, size: Amount, count: int, year: YearLimits) -> str:
    """The units laid end to end, or why not even one fits."""
    none = f"{capital(tell(total, year))} is less than {tell(size, year)}."
    return " ".join(filter(None, (write_sentences(sentences, year) if sentences else "", "" if count else none)))


def expect_more_of_larger(largest: str) -> LikelyError:
    """Thinking that the count grows with the unit."""
    return LikelyError("Thinks that a larger unit gives a larger count.", f"more of “{largest}” than of the others")


def ask_for_volume(task: FindVolume, unit: str, year: YearLimits) -> str:
    """The sides of the cuboid."""
    lengths = listed([tell_as_given(side, year) for side in task.sides])
    return f"A cuboid has sides of {lengths}. What is its volume, in {unit}?"


def say_volume(volume: Amount, unit: str, year: YearLimits) -> str:
    """``Its volume is 36 cm³``."""
    return f"Its volume is {tell(volume, year)} {unit}"


def expect_sum(added: Amount, year: YearLimits) -> LikelyError:
    """Adding the sides."""
    return LikelyError("Adds the sides instead of multiplying them.", tell(bare(added.number), year))
