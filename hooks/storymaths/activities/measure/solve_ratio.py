"""Amounts that keep in step with one another, and an amount shared in a ratio."""

from __future__ import annotations

from ...model.activity import Answer, Context, LikelyError, Solution, Task
from ...model.demands import Demands, amounts
from ...model.quantity import UNITS
from ...model.year import YearLimits
from ..kind import Unsolvable
from ..saying import capital
from . import say_ratio as say
from .amount import Amount, bare, tell_as_given
from .answers import Parts, Rate
from .measured import turn_into
from .sums import Sentence, demands_of_sentences, demands_of_told, join, make_all_like, write_sentences
from .tasks import KeepInStep, ShareInRatio


def find_rate(task: KeepInStep, context: Context) -> Solution[Rate]:
    """What so much comes to, when another amount of the same is known: down to one part, then up to as many."""
    of, comes_to, want, year = task.of, task.comes_to, task.want, context.year
    if of.number <= 0 or want.number <= 0 or comes_to.number <= 0:
        raise Unsolvable(("of",), "One of the amounts is nothing.", "give amounts more than 0.")
    if of.kind != want.kind:
        message = f"{capital(tell_as_given(of, year))} and {tell_as_given(want, year)} are not of one kind."
        raise Unsolvable(("want",), message, "ask for more or less of the same thing.")
    known = turn_into(comes_to, task.to or comes_to.unit, ("to",))
    found = Amount(known.number * want.size / of.size, known.unit)
    sentences = _keep_in_step(task, known, found, year)
    return Solution(
        Task(say.ask_for_rate(task, year)),
        (
            Answer(
                say.say_rate(task, found, year),
                say.explain_rate(sentences, found, year),
                Rate(found.number, found.unit),
            ),
        ),
        demands_of_told([of, comes_to, want, found], year) | demands_of_sentences(sentences, year),
        max(1, len(sentences)),
        "Twice as much of one is twice as much of the other: find one, then as many as are wanted.",
        _expect_adding(task, known, found, year),
    )


def _keep_in_step(task: KeepInStep, known: Amount, found: Amount, year: YearLimits) -> list[Sentence]:
    times, parts = (task.want.size / task.of.size).as_integer_ratio()
    one = Amount(known.number / parts, known.unit)
    sentences = make_all_like([task.comes_to], known.unit, year)
    if task.of.unit != task.want.unit and task.of.unit in UNITS:
        smaller = min(task.of.unit, task.want.unit, key=lambda unit: UNITS[unit][1])
        sentences += make_all_like([task.of, task.want], smaller, year)
    if parts > 1:
        sentences.append((known, "÷", bare(parts), "=", one))
    if times > 1:
        sentences.append((one, "×", bare(times), "=", found))
    return sentences


def _expect_adding(task: KeepInStep, known: Amount, found: Amount, year: YearLimits) -> LikelyError | None:
    added = known.number + (task.want.number - task.of.number)
    if task.of.unit != task.want.unit or added <= 0 or added == found.number:
        return None
    return say.expect_adding(Amount(added, known.unit), year)


def share_in_ratio(task: ShareInRatio, context: Context) -> Solution[Parts]:
    """An amount shared in a ratio: one share first, then each part in the ratio's order."""
    whole, ratio, year = task.total, task.ratio, context.year
    if whole.number <= 0 or len(ratio) < 2:
        fix = 'give a "total" and a "ratio" such as [1, 3].'
        raise Unsolvable(("ratio",), "There is nothing to share in a ratio.", fix)
    shares = sum(ratio)
    one = Amount(whole.number / shares, whole.unit)
    each = [Amount(one.number * count, whole.unit) for count in ratio]
    sentences: list[Sentence] = [(*join(map(bare, ratio), "+"), "=", bare(shares))]
    sentences.append((whole.as_one, "÷", bare(shares), "=", one))
    sentences += [(bare(n), "×", one, "=", part) for n, part in zip(ratio, each, strict=True) if n > 1]
    read = [len(ratio), *([task.times] if task.times else [shares, *ratio, *range(1, len(ratio) + 1)])]
    equal = Amount(whole.number / len(ratio), whole.unit)
    return Solution(
        Task(say.ask_for_parts(task, year)),
        (
            Answer(
                say.say_parts(each, year),
                write_sentences(sentences, year),
                Parts(tuple(part.number for part in each), whole.unit),
            ),
        ),
        demands_of_told([whole, *each], year) | Demands(amounts=amounts(read)) | demands_of_sentences(sentences, year),
        len(sentences),
        "Find one part, then each share.",
        say.expect_equal_parts(equal, year) if len(set(ratio)) > 1 else None,
    )
