"""A chart read or drawn: every question answered, and what that demands."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from functools import reduce
from operator import or_

from ...model.activity import Answer, Context, Figure, LikelyError, Line, Solution, Task
from ...model.demands import Demands, amounts
from ..fraction.calculation import find_part
from ..fraction.demands import demands_of_tables
from ..kind import Unsolvable
from . import say
from .asked import Asked
from .figure import draw_chart
from .marks import count_row, marks_of, numbers_of, tables_of
from .rows import Row, Rows, check_shown, rows_of, scale_step
from .solve_questions import Explained, answer_question, expect_how_many, usual_questions
from .sums import demands_of_numbers, demands_of_sums
from .tasks import UPRIGHT, ChartAnswer, ChartTask, DrawChart, RowMarks, Show

_WORDS: dict[Show, str] = {
    "tally": "tally",
    "pictogram": "pictogram",
    "block": "block diagram",
    "bar": "bar chart",
    "line": "line graph",
    "pie": "pie chart",
}


def solve(task: ChartTask, context: Context) -> Solution[ChartAnswer]:
    """Every question answered, in the order asked; before them, where it is to be drawn, every row."""
    rows = rows_of(task, context)
    check_shown(rows, task.show, task.each)
    if task.upright and task.show not in UPRIGHT:
        message = "Only block diagrams and bar charts can stand up or lie on their side."
        raise Unsolvable(("upright",), message, "leave upright out.")
    each = scale_step(rows, task.each) if task.show in ("bar", "line") else task.each or 1
    asked = _ask(task, rows, each, context)
    to_draw = [_draw_row(row, rows, task, each, context) for row in rows.rows] if isinstance(task, DrawChart) else []
    chart = _demands_of_chart(task, rows, each, context)
    return Solution(
        _set(task, rows, each, asked, context),
        (*(answer for answer, _ in to_draw), *(one.answer for one in asked)),
        reduce(or_, [demands for _, demands in to_draw] + [one.demands for one in asked], chart),
        max([one.steps for one in asked] + [1] * bool(to_draw)),
        say.ONE_ANSWER_EACH,
        _expect_error(task, each, rows, asked),
        _draw_answers(task, rows, each),
    )


def _ask(task: ChartTask, rows: Rows, each: int, context: Context) -> list[Asked]:
    questions = task.questions or (() if isinstance(task, DrawChart) else usual_questions(rows))

    def read(row: Row) -> Explained:
        return _read(row, rows, task.show, each, context)

    keyed = replace(rows, each=each)
    return [answer_question(one, keyed, ("questions", n), task.show, read, context) for n, one in enumerate(questions)]


def _read(row: Row, rows: Rows, show: Show, each: int, context: Context) -> Explained:
    """How a row is read, and what that demands."""
    if show == "table":
        return say.explain_row(None, ()), Demands()
    if show == "pie":
        return _read_slice(row, rows.total, rows.total, context)
    marks, sums = marks_of(row, show, each, rows.total), count_row(row, show, each, context.year)
    return say.explain_row(marks, sums), demands_of_sums(sums) if sums else demands_of_numbers(numbers_of(marks))


def _read_slice(row: Row, total: Fraction, whole: Fraction, context: Context) -> Explained:
    """A slice as a part of the whole: so much of all there is, or so many of 360 degrees."""
    part = row.amount / total
    sums = find_part(whole, part, context.year)
    why = say.explain_slice(part, sums)
    parts = Demands(amounts=amounts([part])) | demands_of_tables([part.denominator], context.year)
    return why, demands_of_sums(sums) | parts


def _draw_row(row: Row, rows: Rows, task: DrawChart, each: int, context: Context) -> tuple[Answer[RowMarks], Demands]:
    marks = marks_of(row, task.show, each, rows.total)
    if task.show == "pie":
        why, demands = _read_slice(row, rows.total, Fraction(360), context)
        demands |= Demands(signs=frozenset("°"))
    else:
        why, demands = _read(row, rows, task.show, each, context)
    return Answer(say.say_row(marks), why, marks), demands | demands_of_numbers(numbers_of(marks))


def _set(task: ChartTask, rows: Rows, each: int, asked: list[Asked], context: Context) -> Task:
    drawing = isinstance(task, DrawChart)
    ask = say.ask_to_draw if drawing else say.ask_to_read
    return Task(
        ask(task.show, None if task.asks_for_key else each, rows, context.year),
        context.characters if rows.owned else (),
        lines=tuple(Line((one.line,), asks=True) for one in asked),
        table=say.write_table(rows) if drawing or task.show == "table" else None,
        figures=() if task.show == "table" else (draw_chart(task, rows, each, filled=not drawing),),
    )


def _demands_of_chart(task: ChartTask, rows: Rows, each: int, context: Context) -> Demands:
    """What the chart, its key and its table demand. Pictures of one each are no pictogram until that is met."""
    name, year = say.NAMES[task.show], context.year
    pictures_of_one = task.show == "pictogram" and each == 1 and not year.draws(name)
    word = _WORDS.get(task.show)
    in_table = [row.amount for row in rows.rows if not row.hidden]
    return Demands(
        words=(word,) if word and year.draws(name) else (),
        tables=tables_of(task.show, each),
        charts=frozenset() if pictures_of_one else frozenset({name}),
    ) | demands_of_numbers(
        [
            *([each] if task.show == "pictogram" else [rows.total] if task.show == "pie" else []),
            *(in_table if isinstance(task, DrawChart) or task.show == "table" else []),
        ]
    )


def _draw_answers(task: ChartTask, rows: Rows, each: int) -> tuple[Figure, ...]:
    if task.show == "table" or not (isinstance(task, DrawChart) or rows.hidden):
        return ()
    return (draw_chart(task, rows, each, filled=True, revealed=True),)


def _expect_error(task: ChartTask, each: int, rows: Rows, asked: list[Asked]) -> LikelyError | None:
    """Counting pictures as ones where each is more; else answering how many for how many more."""
    seen = next((row for row in rows.rows if row.amount and not row.hidden), None)
    if task.show == "pictogram" and each > 1 and seen:
        return say.expect_pictures_as_ones(seen, each)
    return expect_how_many(asked, rows)
