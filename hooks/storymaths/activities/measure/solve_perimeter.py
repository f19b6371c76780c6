"""The perimeter of a shape, by its sides or on squares."""

from __future__ import annotations

from collections.abc import Sequence

from ...model.activity import Answer, Context, LikelyError, Line, Solution, Task
from ...model.demands import Demands
from ...model.year import YearLimits
from ..given import need_one
from ..kind import Unsolvable
from ..tables_used import table_of
from . import say_perimeter as say
from .amount import ONE_CM, Amount, bare
from .answers import Perimeter
from .measured import add_all, find_common_unit
from .squared import read_squares, walk_round
from .sums import Sentence, demands_of_sentences, demands_of_told, join, make_all_like, write_sentences
from .tasks import FindPerimeter

_FEWEST = 3


def find_perimeter(task: FindPerimeter, context: Context) -> Solution[Perimeter]:
    """All the way round: a step for each sum or multiplication."""
    need_one(task, sides=task.sides, squares=task.squares)
    for field, amounts in (("sides", task.sides), ("side", [task.side] if task.side else [])):
        if any(one.number <= 0 or one.kind != "length" for one in amounts):
            raise Unsolvable((field,), "A side has a length of more than 0.", "write lengths such as 5 cm.")
    return _on_squares(task, context) if task.squares else _by_sides(task, context)


def _by_sides(task: FindPerimeter, context: Context) -> Solution[Perimeter]:
    year = context.year
    if task.side:
        raise Unsolvable(("side",), "The side of a square belongs to squares.", "leave it out.", "activity-broken")
    given = [one.as_one for one in task.sides]
    if len(given) == 2:
        given.sort(key=lambda one: -one.size)
    unit = find_common_unit(given, ("sides",))
    own = [one.into(unit) for one in given]
    sides, name = _all_sides(task, own)
    sentences = [*make_all_like(given, unit, year), _add_up(sides, year)]
    return Solution(
        Task(
            say.ask_by_sides(name, given, year),
            lines=(Line(("", f" {unit}")),),
            figures=(say.draw_sides(name, sides, given, year),),
        ),
        (_answer(sides, unit, sentences, year),),
        demands_of_told(given, year, ("perimeter",))
        | Demands(shapes=frozenset({name}))
        | demands_of_sentences(sentences, year),
        max(1, len(sentences[-1]) // 2 - 1),
        "Mark the corner where you begin, and go on until you are back at it.",
        _expect_two(own, year)
        if len(own) == len(sides) // 2 == 2
        else say.expect_side_left_out(add_all(sides[1:], unit), year),
    )


def _all_sides(task: FindPerimeter, given: Sequence[Amount]) -> tuple[list[Amount], str]:
    """Every side, going round, and what such a shape is called."""
    if task.equal is not None:
        if len(given) != 1:
            message = f"The sides are all equal, and {len(given)} are given."
            raise Unsolvable(("sides",), message, "give the one length, or leave equal out.")
        sides = list(given) * task.equal
        return sides, "square" if task.equal == 4 else say.name_shape(task.equal)
    if len(given) == 2:
        return [*given, *given], "square" if given[0].number == given[1].number else "rectangle"
    if len(given) < _FEWEST:
        message = "One side alone says nothing of the others."
        raise Unsolvable(("sides",), message, "add equal: 4 for a square, give two sides of a rectangle, or all sides.")
    longest = max(side.number for side in given)
    if 2 * longest >= sum(side.number for side in given):
        message = "The longest side is as long as all the others together, so the shape does not close."
        raise Unsolvable(("sides",), message, "make that side shorter.")
    return list(given), say.name_shape(len(given))


def _add_up(sides: Sequence[Amount], year: YearLimits) -> Sentence:
    """All sides added; equal ones multiplied, where the year has the sign and the table."""
    total, count = add_all(sides, sides[0].unit), len(sides)
    equal = len({side.number for side in sides}) == 1
    if equal and year.knows("×") and table_of(count, sides[0].number, year) <= set(year.tables):
        return (bare(count), "×", sides[0], "=", total)
    return (*join(sides, "+"), "=", total)


def _answer(sides: Sequence[Amount], unit: str, sentences: Sequence[Sentence], year: YearLimits) -> Answer[Perimeter]:
    total = add_all(sides, unit)
    return Answer(say.say_perimeter(total, year), write_sentences(sentences, year), Perimeter(total.number, unit))


def _expect_two(given: Sequence[Amount], year: YearLimits) -> LikelyError:
    return say.expect_two_sides(add_all(given, given[0].unit), year)


def _on_squares(task: FindPerimeter, context: Context) -> Solution[Perimeter]:
    year = context.year
    if task.equal is not None:
        raise Unsolvable(
            ("equal",), "Squares say themselves how long a side is.", "leave equal out.", "activity-broken"
        )
    side = (task.side or ONE_CM).as_one
    rows = read_squares(task.squares, context.caps.cells)
    steps = walk_round(rows)
    sides = [Amount(step * side.number, side.unit) for step in steps]
    edges = [side] * sum(steps)
    counted = side.number != 1 and _add_up(edges, year)[1] == "×"
    sentence = _add_up(edges if counted else sides, year)
    squares = sum(row.count("x") for row in rows)
    return Solution(
        Task(
            say.ask_on_squares(side, year),
            lines=(Line(("", f" {side.unit}")),),
            figures=(say.draw_squares(rows, side, year),),
        ),
        (_answer(sides, side.unit, [sentence], year),),
        demands_of_told([side], year, ("perimeter",)) | demands_of_sentences([sentence], year),
        1 if counted else len(sides) - 1,
        "Go round the edge with a finger from one corner, and count the sides of squares and not the squares.",
        say.expect_squares_counted(Amount(squares * side.number, side.unit), year) if squares != len(edges) else None,
    )
