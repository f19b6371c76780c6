"""Amounts put together and taken away."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from ...model.activity import Answer, Context, LikelyError, Solution, Task
from ...model.demands import Demands
from ...model.year import YearLimits
from ..given import need_some
from ..kind import Unsolvable
from ..saying import capital
from . import say_totals as say
from .amount import Amount, bare, tell
from .answers import Total
from .measured import add_all, find_common_unit, turn_into
from .sums import Sentence, demands_of_read, demands_of_sentences, demands_of_told, join, make_all_like
from .tasks import FindTotal


def find_total(task: FindTotal, context: Context) -> Solution[Total]:
    """What there is in all, less what goes: a step for each amount after the first, and for each multiplied."""
    need_some(task, start=task.start, amounts=task.amounts, things=task.things)
    amounts, year, unit = task.there, context.year, _unit_of(task)
    there, gone = ([one.into(unit) for one in some] for some in (amounts, task.less))
    together = add_all(there, unit)
    left = Amount(together.number - add_all(gone, unit).number, unit)
    if left.number < 0 and unit != "°C":
        raise Unsolvable(("less",), "More is taken away than there is.", "take away less.")
    sentences = make_all_like([*amounts, *task.less], unit, year)
    if len(there) > 1:
        sentences.append((*join(there, "+"), "=", together))
    if gone:
        sentences.append((*join([together, *gone], "−"), "=", left))
    line = _join_line(task)
    return Solution(
        Task(say.ask_for_total(task, unit, year), lines=(say.leave_gap(line, year),)),
        (Answer(capital(tell(left, year)), say.explain_total(sentences, left, year), Total(left.number, unit)),),
        demands_of_told([*amounts, *task.less, left], year)
        | Demands(words=("temperature",) if unit == "°C" else ())
        | demands_of_read((*line, "="), year)
        | demands_of_sentences(sentences, year),
        max(1, len(amounts) + len(task.less) - 1 + sum(amount.count > 1 for amount in amounts)),
        "The order of adding makes no difference.",
        _expect_one_each(amounts, gone, unit, year),
    )


def _unit_of(task: FindTotal) -> str:
    if any(amount.number <= 0 for amount in task.less):
        raise Unsolvable(("less",), "An amount taken away is nothing or below nothing.", "take away more than 0.")
    unit = find_common_unit([*task.there, *task.less], ("less",) if task.less else ("amounts",))
    return turn_into(Amount(Fraction(1), unit), task.to, ("to",)).unit if task.to else unit


def _join_line(task: FindTotal) -> Sentence:
    """All of it on the left of a number sentence."""
    line: list[Amount | str] = []
    for amount in task.there:
        several = (bare(amount.count), "×", amount.each)
        line += ["+", *(several if amount.count > 1 else [amount.as_one])]
    for amount in task.less:
        line += ["−", amount.as_one]
    return tuple(line[1:])


def _expect_one_each(
    amounts: Sequence[Amount], gone: Sequence[Amount], unit: str, year: YearLimits
) -> LikelyError | None:
    once = add_all((amount.each.into(unit) for amount in amounts), unit).number - add_all(gone, unit).number
    if all(amount.count == 1 for amount in amounts) or once <= 0:
        return None
    return say.expect_one_each(Amount(once, unit), year)
