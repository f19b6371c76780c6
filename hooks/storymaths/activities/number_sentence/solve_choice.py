"""Which calculations answer a story's question, or check a calculation."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from ...expression.tree import Number
from ...model.activity import Answer, Context, LikelyError, Line, Solution, Task
from ...model.demands import Demands
from ..arithmetic import demand_numbers, find_tables
from ..choices import Choice, read_choice
from ..kind import Unsolvable
from ..saying import written
from . import say_choice as say
from .filled import PLACES
from .tasks import ChoiceTask, Chosen

_NUMBER = re.compile(r"\d[\d,]*(?:\.\d+)?")
_INSTEAD = (Fraction(1009), Fraction(3001))
"""Numbers in place of one of the story's: calculations that come to the same with both are one calculation. Two primes
that no choice for children has."""


def solve_choice(task: ChoiceTask, context: Context) -> Solution[Chosen]:
    """Every right choice, in the order given. Raises ``Unsolvable``."""
    choices = [_read(text, ("choices", index)) for index, text in enumerate(task.choices)]
    if twice := [one for one, count in Counter(choice.text for choice in choices).items() if count > 1]:
        raise Unsolvable(("choices",), f"{twice[0]} stands there twice.", "take one of them out.")
    asked = _judge(task, choices)
    right = asked.right
    if len(right) == len(choices):
        raise Unsolvable(("choices",), "All of them are right.", "add some that are not.")
    steps = [step for choice in right for step in choice.steps]
    return Solution(
        Task(asked.ask, lines=tuple(Line((choice.text,)) for choice in choices)),
        tuple(Answer(choice.text, say.explain(choice), Chosen(choice.text, choice.worth)) for choice in right),
        _demands(choices, asked.wanted)
        | demand_numbers(Number(number, written(number, PLACES)) for step in steps for number in step.numbers)
        | Demands(
            operations=tuple(dict.fromkeys(steps)),
            signs=frozenset("=" if steps or task.checks else ""),
            tables=find_tables(steps, context.year),
        ),
        len(asked.wanted.steps),
        say.tell_others([choice for choice in choices if choice not in right]),
        asked.slip,
    )


@dataclass(frozen=True, slots=True)
class _Asked:
    """What is asked of the choices: what they are held against, those that are right, and the likely slip."""

    ask: str
    wanted: Choice
    right: list[Choice]
    slip: LikelyError | None


def _judge(task: ChoiceTask, choices: Sequence[Choice]) -> _Asked:
    """Which of them are right. Raises ``Unsolvable`` where it is not said what they are for."""
    if task.makes is not None and task.checks is None and task.story:
        wanted = _read(task.makes, ("makes",))
        right = [choice for index, choice in enumerate(choices) if _is_same(choice, wanted, index)]
        return _Asked(say.ask_for_answer(task.story), wanted, right, say.expect_other_sign(choices, right, wanted))
    if task.checks is not None and task.makes is None and not task.story:
        wanted, result = _read_checked(task.checks)
        right = [choice for choice in choices if _undoes(choice, wanted, result)]
        return _Asked(say.ask_for_check(task.checks), wanted, right, say.expect_again(choices, right, wanted))
    message = "It takes a story with what it makes, or a calculation that is checked."
    raise Unsolvable(("choices",), message, 'give "story" and "makes", or "checks" alone.', "activity-broken")


def _demands(choices: Sequence[Choice], wanted: Choice) -> Demands:
    """What reading them demands: a wrong one is not worked out."""
    read = (*choices, wanted)
    signs = frozenset(step.sign for choice in read for step in choice.steps)
    return demand_numbers(number for choice in read for number in choice.numbers) | Demands(signs=signs)


def _read(text: str, loc: tuple[str, int] | tuple[str]) -> Choice:
    choice = read_choice(text, loc)
    if not choice.steps:
        raise Unsolvable(loc, f"{choice.text} is a number and no calculation.", "write one such as 12 − 4.")
    return choice


def _is_same(choice: Choice, wanted: Choice, index: int) -> bool:
    """Whether it is what the story makes, perhaps written in another way. Raises where it only comes to the same."""
    if choice.worth != wanted.worth:
        return False
    if any(_varies_alike(choice, wanted, number) for number in {number.value for number in wanted.numbers}):
        return True
    message = f"{choice.text} comes to {written(wanted.worth, PLACES)}, as {wanted.text} does, and is not what the story makes."
    raise Unsolvable(("choices", index), message, "change the numbers, so that only what is right comes to that.")


def _varies_alike(choice: Choice, wanted: Choice, number: object) -> bool:
    """Whether both still come to the same when another number stands in the place of one of the story's."""
    for instead in _INSTEAD:
        made = [_worth_with(one.text, Fraction(str(number)), instead) for one in (choice, wanted)]
        if made[0] is None or made[0] != made[1]:
            return False
    return True


def _worth_with(text: str, number: Fraction, instead: Fraction) -> Fraction | None:
    def put(found: re.Match[str]) -> str:
        return str(instead) if Fraction(found.group().replace(",", "")) == number else found.group()

    try:
        return read_choice(_NUMBER.sub(put, text), ()).worth
    except Unsolvable:
        return None


def _read_checked(text: str) -> tuple[Choice, Fraction]:
    """A calculation of two numbers and what comes of it. Raises ``Unsolvable``."""
    left, equals, right = text.partition("=")
    fix = "write a calculation of two numbers and what it comes to, such as 15 − 7 = 8."
    if not equals:
        raise Unsolvable(("checks",), "There is nothing to check.", fix)
    done, result = (read_choice(side.strip(), ("checks",)) for side in (left, right))
    if len(done.numbers) != 2 or len(done.steps) != 1 or result.steps:
        raise Unsolvable(("checks",), "Only a calculation of two numbers can be checked so.", fix)
    if done.worth != result.worth:
        message = f"{done.text} is {written(done.worth, PLACES)}, not {result.text}."
        raise Unsolvable(("checks",), message, "check one that is right.")
    return done, done.worth


def _undoes(choice: Choice, done: Choice, result: Fraction) -> bool:
    """Whether it leads from the result and one of the numbers back to the other."""
    own = [Fraction(number.value) for number in choice.numbers]
    one, other = (Fraction(number.value) for number in done.numbers)
    back = [(one, other), (other, one)]
    return len(own) == 2 and any(
        sorted(own) == sorted((result, kept)) and choice.worth == found for kept, found in back
    )
