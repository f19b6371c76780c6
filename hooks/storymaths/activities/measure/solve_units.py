"""Measuring with things against measuring with standard units, and the volume of a cuboid."""

from __future__ import annotations

from ...model.activity import Answer, Context, LikelyError, Line, Solution, Task
from ...model.demands import Demands, amounts
from ...model.year import YearLimits
from ..kind import Unsolvable
from . import say_units as say
from .amount import Amount, bare
from .answers import UnitCount, Volume
from .measured import add_all, find_common_unit
from .sums import Sentence, demands_of_sentences, demands_of_told, join, make_all_like, write_sentences
from .tasks import CountUnits, FindVolume

_ADDED_UP_TO = 8


def count_units(task: CountUnits, context: Context) -> Solution[UnitCount]:
    """How many of each unit make the amount, and what is left over, in the order of the units."""
    year = context.year
    if task.amount.number <= 0 or any(one.number <= 0 for one in task.by.values()):
        raise Unsolvable(("by",), "Nothing can be measured with a unit of no size.", "give sizes more than 0.")
    unit = find_common_unit([task.amount, *task.by.values()], ("by",))
    total = task.amount.into(unit)
    answers, demands = [], demands_of_told([task.amount, *task.by.values()], year)
    for name, one in task.by.items():
        size = one.into(unit)
        count = int(total.number // size.number)
        left = Amount(total.number - count * size.number, unit)
        sentences = [*make_all_like([task.amount, one], unit, year), *_lay_end_to_end(count, size, left, total, year)]
        why = say.explain_count(sentences, total, size, count, year)
        answers.append(Answer(say.say_count(name, count, left, year), why, UnitCount(name, count, left.number)))
        demands |= demands_of_sentences(sentences, year) | Demands(amounts=amounts([count]))
        demands |= demands_of_told([left] if left.number else [], year)
        demands |= demands_of_told([] if count else [total, size], year, () if count else ("less",))
    return Solution(
        Task(say.ask_for_counts(task, year), lines=tuple(map(say.leave_gap, task.by))),
        tuple(answers),
        demands,
        1 + any(answer.value.left for answer in answers),
        "Lay each end to end until no more fit. The larger it is, the fewer are needed.",
        _expect_more_of_larger(task, [answer.value.count for answer in answers]),
    )


def _lay_end_to_end(count: int, size: Amount, left: Amount, total: Amount, year: YearLimits) -> list[Sentence]:
    filled = Amount(size.number * count, size.unit)
    if not count:
        return []
    if not year.knows("×") and count <= _ADDED_UP_TO:
        laid: Sentence = (*join([size] * count, "+"), "=", filled)
    else:
        laid = (bare(count), "×", size, "=", filled)
    return [laid, (filled, "+", left, "=", total)] if left.number else [laid]


def _expect_more_of_larger(task: CountUnits, counts: list[int]) -> LikelyError | None:
    if len(set(counts)) < 2:
        return None
    return say.expect_more_of_larger(max(task.by, key=lambda name: task.by[name].size))


def find_volume(task: FindVolume, context: Context) -> Solution[Volume]:
    """The volume of a cuboid: the layer first, then the layers. A step for each multiplication."""
    year, unit = context.year, find_common_unit(task.sides, ("sides",))
    if len(task.sides) != 3 or any(side.number <= 0 for side in task.sides) or task.sides[0].kind != "length":
        message = "A cuboid has three lengths, each more than 0."
        raise Unsolvable(("sides",), message, 'write three, such as ["12 cm", "2 cm", "2 cm"].')
    sides = [bare(side.into(unit).number) for side in task.sides]
    layer = bare(sides[0].number * sides[1].number)
    whole = bare(layer.number * sides[2].number)
    sentences = make_all_like(task.sides, unit, year)
    sentences += [(sides[0], "×", sides[1], "=", layer), (layer, "×", sides[2], "=", whole)]
    cubes, added = f"{unit}³", add_all(sides, "")
    return Solution(
        Task(say.ask_for_volume(task, cubes, year), lines=(Line(("", f" {cubes}")),)),
        (
            Answer(
                say.say_volume(whole, cubes, year),
                write_sentences(sentences, year),
                Volume(whole.number, cubes),
            ),
        ),
        demands_of_told(task.sides, year, ("volume", "cuboid"))
        | Demands(signs=frozenset("³"), other_units=frozenset({cubes}))
        | demands_of_sentences(sentences, year),
        2,
        "A cuboid is filled by so many layers of so many unit cubes.",
        say.expect_sum(added, year) if added.number != whole.number else None,
    )
