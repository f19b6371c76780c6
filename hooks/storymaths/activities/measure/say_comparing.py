"""Amounts compared, put in order and converted, in words."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from ...model.activity import Answer, LikelyError, Line
from ...model.year import YearLimits
from ..saying import capital, listed, written
from .amount import MORE, Amount, tell, tell_as_given
from .answers import Converted
from .measured import Measured
from .sums import Sentence, write_sentence, write_sentences
from .tasks import OrderAmounts

_COMMON = re.compile(r"(?!(?:the|a|an|my|your|his|her|its|our|their|one|this|that)\b)[a-z]{2}")
"""How a name begins that has no article yet, and is nobody's own."""
_IN_WORDS = {"£": "pounds", "p": "pence", "l": "litres", "litre": "litres"}


def word_for_more(amount: Amount) -> str:
    """``longer``, ``heavier``, or just ``more``."""
    return MORE.get(amount.kind, "more")


def ask_which(amount: Amount) -> str:
    """Which of two is more."""
    return f"Which is {word_for_more(amount)}, and by how much?"


def say_difference(more: Measured, less: Measured, gap: Amount, year: YearLimits) -> str:
    """``The rope is 35 cm longer than the stick``."""
    by = tell(gap, year)
    if gap.kind == "temperature":
        by = f"{written(gap.number, year.decimal_places)} {'degree' if gap.number == 1 else 'degrees'}"
    return f"{capital(_call(more, year))} is {by} {word_for_more(gap)} than {_call(less, year)}"


def _call(thing: Measured, year: YearLimits) -> str:
    """A thing as it is spoken of; one that is somebody's, or has a name, as it is written."""
    told = thing.tell(year)
    return f"the {told}" if thing.name and _COMMON.match(told) else told


def say_same(one: Measured, other: Measured, year: YearLimits) -> str:
    """``Rope and stick are the same``."""
    return f"{capital(_call(one, year))} and {_call(other, year)} are the same"


def explain_difference(made_like: Sequence[Sentence], last: Sentence, start: str, year: YearLimits) -> str:
    """The amounts in one unit, then the difference with how it is come by."""
    return " ".join([*(f"{write_sentence(one, year)}." for one in made_like), f"{start}{write_sentence(last, year)}."])


UP_TO_NOUGHT, BELOW_NOUGHT = "Up to 0 and then on: ", "Both are counted down from 0: "


def ask_for_order(task: OrderAmounts) -> str:
    """From which end to begin."""
    return f"Put these in order, the {'greatest' if task.greatest_first else 'least'} first."


def say_order(places: Sequence[Sequence[Measured]], year: YearLimits) -> str:
    """``Stick, then pole and pipe, then rope``."""
    return capital(", then ".join(listed([one.tell(year) for one in place]) for place in places))


def explain_order(places: Sequence[Sequence[Measured]], sentences: Sequence[Sentence], year: YearLimits) -> str:
    """The amounts in one unit between signs where the year has them, else one after another."""
    if sentences:
        return write_sentences(sentences, year)
    return capital(f"{', then '.join(tell(place[0].amount, year) for place in places)}.")


def expect_numbers_alone(gives: str) -> LikelyError:
    """Comparing numbers of unlike units."""
    return LikelyError("Looks at the numbers and not at the units.", gives)


def ask_in_unit(unit: str) -> str:
    """Which unit to tell it in."""
    return f"Tell each in {_IN_WORDS.get(unit, unit)}."


def leave_gap(amount: Amount, unit: str, year: YearLimits) -> Line:
    """``6 weeks = ___ days``."""
    return Line((f"{tell_as_given(amount, year)} = ", f" {unit}"))


def answer_conversion(
    one: Measured, other: Amount, value: Converted, sentences: Sequence[Sentence], year: YearLimits
) -> Answer[Converted]:
    """``Rope: 2 m is 200 cm``."""
    who = f"{one.name}: " if one.id else ""
    says = f"{capital(who)}{tell_as_given(one.amount, year)} is {tell(other, year)}"
    return Answer(says, write_sentences(sentences, year), value)


def expect_other_way(divides: bool, wrong: Amount, given: Amount, year: YearLimits) -> LikelyError:
    """Turning a unit the wrong way."""
    does = "Divides where it should multiply." if divides else "Multiplies where it should divide."
    return LikelyError(does, f"{tell(wrong, year)} for {tell_as_given(given, year)}")


def note_on_order(unlike: bool, some_equal: bool) -> Iterator[str]:
    """What to do first, and where equals go."""
    if unlike:
        yield "Put them all in one unit."
    if some_equal:
        yield "Equal amounts share a place."
