"""Number sentences worked out: every filling of each line, whether those without gaps are true, and what it demands."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from ...expression.number import Rational
from ...expression.tree import Number
from ...model.activity import Answer, Context, Shown, Solution, Task
from ...model.demands import Demands, Operation
from ..arithmetic import cards_of, demand_numbers, find_operations, find_tables, signs_of
from ..saying import written
from . import say
from .bars import draw_bars
from .filled import PLACES, Filled
from .reasoning import Compared, Step, find_steps, find_steps_to_judge, put_right
from .search import find_fillings, judge_lines, known_numbers, read_lines
from .solve_choice import solve_choice
from .solve_family import solve_family
from .tasks import (
    ChoiceTask,
    Chosen,
    Family,
    FamilyTask,
    Judged,
    NumberSentenceAnswer,
    NumberSentenceTask,
    SentencesTask,
)


def solve(task: NumberSentenceTask, context: Context) -> Solution[NumberSentenceAnswer]:
    """Every filling, sentence by sentence; in each, the first gap's number rising. Raises ``Unsolvable``."""
    match task:
        case FamilyTask():
            return solve_family(task, context)
        case ChoiceTask():
            return solve_choice(task, context)
        case SentencesTask():
            return _solve_sentences(task, context)


def _solve_sentences(task: SentencesTask, context: Context) -> Solution[NumberSentenceAnswer]:
    lines, year = read_lines(task, context), context.year
    filled, judged = find_fillings(task, context), judge_lines(task, context)
    bars = draw_bars(filled) if len(lines) == 1 else None
    playing = context.characters if task.fact else ()
    shown = [int(character.facts[task.fact or ""]) for character in playing]
    answers: list[Answer[NumberSentenceAnswer]] = [
        *(Answer(say.say_filled(one), say.explain(one, year), one) for one in filled),
        *(Answer(say.say_judged(one), say.explain_judged(one, year), one) for one in judged),
    ]
    met = [*(Number(number, written(number)) for number in shown), *known_numbers(task, context)]
    met += [number for one in filled for number in one.numbers_met()]
    return Solution(
        task=Task(
            ask=say.ask_for(task, lines),
            characters=playing,
            shows=tuple(Shown(written(number), Fraction(number)) for number in shown),
            lines=tuple(map(say.write_line, lines)),
            figures=(bars,) if bars else (),
        ),
        answers=tuple(sorted(answers, key=_line_of)),
        demands=_demands(task, lines, filled, judged, context) | demand_numbers(met),
        steps=max((one.count_steps() for one in filled), default=1),
        note=say.explain_all(task, lines, filled),
        likely_error=say.find_likely_error(filled, len(lines)),
        cards=cards_of(met, _signs_written(lines, filled, judged)),
    )


def _line_of(answer: Answer[NumberSentenceAnswer]) -> int:
    assert not isinstance(answer.value, Family | Chosen), "these have no line"
    return answer.value.line


def _signs_written(lines: say.Lines, filled: Sequence[Filled], judged: Sequence[Judged]) -> Iterator[tuple[str, ...]]:
    """The signs of each line, of each way to fill it, and of what is true instead of it."""
    yield from (tuple(signs_of(tokens)) for tokens in (*lines, *(one.sentence.tokens for one in filled)))
    for right in (put_right(one.as_filled()) for one in judged if not one.true):
        if right is not None:
            yield (right.relation,)


def _demands(
    task: SentencesTask, lines: say.Lines, filled: Sequence[Filled], judged: Sequence[Judged], context: Context
) -> Demands:
    """What choosing numbers for gaps demands, and the signs, calculations and tables of the lines and their steps."""
    year = context.year
    steps: list[Step] = [step for one in filled for step in find_steps(one, year)]
    for one in judged:
        steps += (find_steps if one.true else find_steps_to_judge)(one.as_filled(), year)
    done = [*filled, *(one.as_filled() for one in judged)]
    as_asked = [found for one in done for found in find_operations(one.sentence.sides, one.numbers)]
    operations = [step for step in steps if isinstance(step, Operation)]
    with_units = [
        found for one in done if one.has_units() for found in find_operations(one.sentence.sides, one.numbers)
    ]
    signs = {sign for line in _signs_written(lines, filled, judged) for sign in line}
    signs |= {step.sign if isinstance(step, Operation) else step.relation for step in steps}
    places = min((one.places for one in done), default=PLACES)
    numbers: list[Rational] = [*_ends_of(task.gaps), *(number for step in operations for number in step.numbers)]
    numbers += [number for step in steps if isinstance(step, Compared) for number in (step.left, step.right)]
    return demand_numbers(Number(number, written(number, places)) for number in numbers) | Demands(
        operations=tuple(dict.fromkeys((*operations, *with_units))),
        signs=frozenset(signs | ({"="} if operations else set())),
        words=tuple(say.find_words(task, lines)),
        tables=find_tables(as_asked, year),
    )


def _ends_of(gaps: range | tuple[int, ...] | str | None) -> tuple[int, ...]:
    """The numbers that a choice is said with."""
    if isinstance(gaps, range):
        return (gaps[0], gaps[-1])
    return gaps if isinstance(gaps, tuple) else ()
