"""A choice of calculations, in words."""

from __future__ import annotations

from collections.abc import Sequence

from ...model.activity import LikelyError
from ..choices import Choice
from ..saying import capital, listed, written
from ..sentences import write_calculation
from .filled import PLACES


def ask_for_answer(story: str) -> str:
    """The story and its question."""
    return f"{story} Which of these calculations answer the question?"


def ask_for_check(done: str) -> str:
    """What is to be checked."""
    return f"Which of these calculations check that {done.strip().replace('-', '−')}?"


def explain(choice: Choice) -> str:
    """The calculation worked out."""
    return ". ".join(write_calculation(step, PLACES) for step in choice.steps) + "."


def tell_others(others: Sequence[Choice]) -> str:
    """What the others come to."""
    return f"{capital(listed([_tell(choice) for choice in others]))}."


def _tell(choice: Choice) -> str:
    return f"{choice.text} comes to {written(choice.worth, PLACES)}"


def expect_other_sign(choices: Sequence[Choice], right: Sequence[Choice], wanted: Choice) -> LikelyError | None:
    """The story's numbers with another sign, or the other way round."""
    numbers = sorted(number.value for number in wanted.numbers)
    wrong = [choice for choice in choices if choice not in right]
    same = [choice for choice in wrong if sorted(number.value for number in choice.numbers) == numbers]
    if same:
        return LikelyError("Takes the story’s numbers, and not what happens to them.", f"{_tell(same[0])}.")
    return None


def expect_again(choices: Sequence[Choice], right: Sequence[Choice], done: Choice) -> LikelyError | None:
    """The same calculation again, which would go wrong in the same way."""
    again = [choice for choice in choices if choice not in right and choice.text == done.text]
    if again:
        return LikelyError("Works out the same again, and would make the same slip.", f"{_tell(again[0])}.")
    return None
