"""Amounts put together and taken away, in words."""

from __future__ import annotations

from collections.abc import Sequence

from ...model.activity import LikelyError, Line
from ...model.year import YearLimits
from ..saying import listed
from .amount import Amount, tell, tell_as_given
from .sums import Sentence, write_sentence, write_sentences
from .tasks import FindTotal


def ask_for_total(task: FindTotal, unit: str, year: YearLimits) -> str:
    """What there is and what goes; of temperatures, how they change."""
    told = [tell_as_given(amount, year) for amount in task.there]
    gone = listed([tell_as_given(amount, year) for amount in task.less])
    if unit == "°C":
        changes = [f"rises by {text}" for text in told[1:]] + ([f"falls by {gone}"] if gone else [])
        then = f" and {listed(changes)}. What is it then?" if changes else ". What is it?"
        return f"The temperature is {told[0]}{then}"
    opening = f"Put together {listed(told)}." if len(told) > 1 else f"Start with {told[0]}."
    return f"{opening} {f'Take away {gone}. How much is left?' if gone else 'How much is that in all?'}"


def leave_gap(terms: Sentence, year: YearLimits) -> Line:
    """``8 × 4 kg + 20 kg = ___``."""
    return Line((f"{write_sentence(terms, year)} = ", ""))


def explain_total(sentences: Sequence[Sentence], left: Amount, year: YearLimits) -> str:
    """The sums that lead to it, if there are any."""
    return write_sentences(sentences, year) if sentences else f"It is {tell(left, year)} and nothing more."


def expect_one_each(once: Amount, year: YearLimits) -> LikelyError:
    """Taking each amount once."""
    return LikelyError("Takes one of each instead of all of them.", tell(once, year))
